using CanopySim.Assessment;
using CanopySim.Parameters;
using CanopySim.Results;

namespace CanopySim.Files.Tests.Charts;

/// <summary>An assessment made up for the tests of charts and report. Nothing here is a result.</summary>
internal static class InventedAssessment
{
    private static readonly FruitSide West = FruitSide.Of(0, false, 0);
    private static readonly FruitSide East = FruitSide.Of(0, true, 0);

    public static CanopyScoreSummary Score { get; } = new(46, 60, [new("gaps", 10), new("leaf_layers", 8)]);

    public static FruitLightSummary Light { get; } = new()
    {
        ParMolM2D = 4.26,
        ShareOfIncident = 0.093,
        SunlitShare = 0.061,
        MorningShare = 0.47,
        Sides = [new(West, 21, 4.4, 0.096, 0.063, 0.31), new(East, 19, 4.1, 0.09, 0.059, 0.66)],
    };

    public static FruitHeatSummary Heat { get; } = new()
    {
        HighestSurfaceDegC = 46.3,
        HighestOn = new DateOnly(2023, 7, 14),
        HighestSide = West,
        HighestAboveAirDegC = 12.1,
        BrowningDegC = 45,
        NecrosisDegC = 48,
        Sides = [new(West, 46.3, 3.5, 0, 4, 0), new(East, 44.1, 0, 0, 0, 0)],
    };

    public static NextYearSummary NextYear { get; } = new()
    {
        Fruitfulness = 0.62,
        Spread = 0.05,
        Least = 0.48,
        Most = 0.71,
        Shoots = 24,
        LightFactor = 0.83,
        TemperatureFactor = 0.74,
        ParUmolM2S = 705,
        From = new DateOnly(2023, 4, 12),
        To = new DateOnly(2023, 6, 9),
    };

    public static AssessmentResult Rows(IReadOnlyList<DayRow> days)
    {
        var fruit = days.Where(day => day.Date >= InventedSeason.Bloom && day.Date <= InventedSeason.Ripe).ToList();
        return new AssessmentResult
        {
            CanopySheet =
            [
                Row("shoots_per_m", "Shoots along the canopy", 16.3, "1/m", 10, 20, SheetVerdict.Within),
                Row("shoot_length", "Length of a shoot", 131.6, "cm", 60, 90, SheetVerdict.Above),
                Row("leaf_area_density", "Leaf area in the room of the canopy", 6.1, "m2/m3", 3, 7, SheetVerdict.Within),
                Row("leaf_layers", "Leaf layers in the fruit zone", 1.83, "1", 1, 1.5, SheetVerdict.Above) with { SamplingError = 0.14 },
                Row("gaps", "Gaps in the fruit zone", 0.21, "share", 0.2, 0.4, SheetVerdict.Within) with { SamplingError = 0.03 },
                Row("prunings", "Prunings along the canopy", 0.41, "kg/m", 0.5, 1, SheetVerdict.Below),
                Row("leaf_area_per_fruit", "Leaf area for each weight of fruit", null, "m2/kg", 0.8, 1.2, SheetVerdict.NotReached),
                Row("leaf_color", "Color of the leaves", null, "", null, null, SheetVerdict.JudgeInRow),
            ],
            FruitLight = [],
            FruitLightHours = [.. from hour in Enumerable.Range(5, 15) from side in new[] { West, East } select HourOf(hour, side)],
            FruitHeat = [.. from day in fruit from side in new[] { West, East } select HeatOf(day.Date, side)],
        };
    }

    private static CanopySheetRow Row(string item, string name, double? value, string unit, double? low, double? high, SheetVerdict verdict) => new()
    {
        Item = item,
        Name = name,
        At = "veraison",
        Value = value,
        Unit = unit,
        Low = low,
        High = high,
        Mark = Mark.Published,
        Source = "an invented handbook",
        Verdict = verdict,
        Meaning = "What it means.",
    };

    private static FruitLightHourRow HourOf(int hour, FruitSide side)
    {
        var peak = side.IsRight ? 9 : 15;
        var light = Math.Exp(-(hour - peak) * (hour - peak) / 8.0);
        return new FruitLightHourRow(InventedSeason.Veraison, InventedSeason.Veraison.AddDays(6), hour, side, 220 * light, 1500, 0.2 * light, 25, 25 + (8 * light));
    }

    private static FruitHeatRow HeatOf(DateOnly date, FruitSide side)
    {
        var air = 27 + (4 * Math.Sin(date.DayNumber / 5.0));
        var spot = air + (side.IsRight ? 9 : 11);
        return new FruitHeatRow(date, side, air, spot, spot - air, spot >= 42 ? 0.5 : 0, 0);
    }
}
