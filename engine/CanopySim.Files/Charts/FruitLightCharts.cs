using CanopySim.Assessment;
using CanopySim.Results;

namespace CanopySim.Files.Charts;

/// <summary>Light and heat on the fruit of each side.</summary>
internal static class FruitLightCharts
{
    // Sides of the morning, of the afternoon, and those that look north or south: no two alike in lightness.
    private const uint Afternoon = 0x8A5A0A;
    private const uint Neither = 0x5A5F55;

    public static ChartSheet Light(SeasonResult season)
    {
        var light = new ChartPanel("PAR on the clusters' surface, µmol m⁻² s⁻¹");
        var sunlit = new ChartPanel("% of their surface in the sun");
        var rows = season.Summary.Dates.Veraison is { } veraison
            ? season.Assessment.FruitLightHours.Where(row => row.To >= veraison).ToList()
            : [];
        foreach (var side in rows.GroupBy(row => row.Side).OrderBy(side => (side.Key.Wall, side.Key.IsRight)))
        {
            Draw(light, side, row => row.ParUmolM2S);
            Draw(sunlit, side, row => 100 * row.SunlitShare);
        }

        // All lines end at nothing: a side's name stands as high as its brightest hour.
        void Draw(ChartPanel panel, IGrouping<FruitSide, FruitLightHourRow> side, Func<FruitLightHourRow, double> value)
        {
            var weeks = (double)rows.Select(row => row.From).Distinct().Count();
            var points = side.GroupBy(row => row.Hour).OrderBy(hour => hour.Key)
                .Select(hour => new ChartPoint(hour.Key + 0.5, hour.Sum(value) / weeks)).ToList();
            panel.Line(points, ColorOf(side.Key));
            panel.EndLabels.Add(
                new EndLabel(
                LabelOf(side.Key, rows.Select(row => row.Side)), points.Max(point => point.Y), ColorOf(side.Key)));
        }

        var (first, last) = rows.Count > 0 ? (rows.Min(row => row.Hour), rows.Max(row => row.Hour) + 1) : (4, 20);
        return new ChartSheet(
            SeasonCharts.FruitLight, "Light on the fruit through the day", LightCaption(season),
            ChartAxis.OfHours(first, last, "hour of the day, standard time"), [light, sunlit])
        {
            WhenEmpty = "no fruit to ripen in this season",
        };
    }

    public static ChartSheet Heat(SeasonResult season, Scenario scenario, SeasonSeries series, Units units)
    {
        var panel = new ChartPanel($"warmest spot on the clusters of each day, {(units == Units.Us ? "°F" : "°C")}")
        {
            Floor = Degrees(
                season.Assessment.FruitHeat is { Count: > 0 } rows
                ? 10 * Math.Floor(rows.Min(row => row.HighestAirDegC) / 10) : 0),
        };
        double Degrees(double celsius) => units == Units.Us ? (celsius * 1.8) + 32 : celsius;
        var sides = season.Assessment.FruitHeat.GroupBy(row => row.Side)
            .OrderBy(side => (side.Key.Wall, side.Key.IsRight)).ToList();
        if (sides.Count > 0)
        {
            panel.Line(
                sides[0].Select(row => new ChartPoint(ChartAxis.PlaceOf(row.Date), Degrees(row.HighestAirDegC))),
                    ChartStyle.StageLine,
                isThin: true, label: "air");
            panel.Level(Degrees(scenario.FruitHeat.BrowningTemperature), "browning from here");
            panel.Level(Degrees(scenario.FruitHeat.NecrosisTemperature), "skin dies from here");
        }

        foreach (var side in sides)
        {
            panel.Line(
                side.Select(row => new ChartPoint(ChartAxis.PlaceOf(row.Date), Degrees(row.HighestSurfaceDegC))),
                    ColorOf(side.Key), isThin: true,
                label: LabelOf(side.Key, sides.Select(each => each.Key)));
        }

        var caption = season.Summary.FruitHeat is { } heat
            ? $"The warmest spot reached {Measure.Temperature(units, heat.HighestSurfaceDegC, 0)} on "
              + $"{ChartAxis.DayText(heat.HighestOn, isShort: false)}, on the {heat.HighestSide.Facing} side; the "
                  + "thresholds are rough guides."
            : "Without fruit nothing is exposed to heat.";
        return new ChartSheet(SeasonCharts.FruitHeat, "Heat on exposed fruit", caption, series.Axis, [panel])
        {
            Stages = series.Stages,
            WhenEmpty = "no fruit in this season",
        };
    }

    private static string LightCaption(SeasonResult season) =>
        season.Summary.FruitLight is not { ShareOfIncident: { } share } light
        ? "Without fruit that ripens there is no light on it."
        : $"Mean course of a day from veraison on: {Measure.Number(100 * share, 0)} % of the light over the canopy "
            + "falls on the clusters"
            + (light.MorningShare is { } morning ? $", {Measure.Number(100 * morning, 0)} % of it before noon." : ".");

    private static string LabelOf(FruitSide side, IEnumerable<FruitSide> sides)
    {
        var walls = sides.Select(each => each.Wall).Distinct().Count();
        return walls > 1 ? $"{side.Facing}, wall {side.Wall + 1}" : $"{side.Facing} side";
    }

    private static uint ColorOf(FruitSide side) => side.PartOfDay switch
    {
        "morning" => ChartStyle.Line,
        "afternoon" => Afternoon,
        _ => side.IsRight ? ChartStyle.Line : Neither,
    };
}
