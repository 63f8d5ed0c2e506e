using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Protection;

namespace CanopySim.Files.Forecast;

/// <summary>Charts of the vine up to the day of the forecast: tips and water, leaf and sprays, temperature index.</summary>
internal static class StandingCharts
{
    public const string Tips = "growing-tips";

    public const string Sprays = "spray-cover";

    public const string Mildew = "temperature-index";

    // A dot at 100 % is seen whole.
    private const double AboveAll = 106;

    // Points between the classes of the index.
    private const double ModerateFrom = 35;
    private const double HighFrom = 65;

    public static ChartSheet TipsAndWater(StandingVine vine, IReadOnlyList<TipReading> readings)
    {
        var tips = new ChartPanel("% of the shoots whose tips grow freely") { Ceiling = AboveAll };
        tips.Line(
            vine.Season.Tips.Select(day => new ChartPoint(ChartAxis.PlaceOf(day.Date), 100 * day.GrowingFreely)), ChartStyle.Line,
            label: "model");
        var noted = readings.Where(reading => reading.Seen.Tips > 0).Select(reading => reading.Seen).ToList();
        tips.Dots(
            noted.Select(seen => new ChartPoint(ChartAxis.PlaceOf(seen.Date), 100.0 * seen.GrowingFreely / seen.Tips)), ChartStyle.Text,
            "noted");
        var soil = new ChartPanel("water left in the soil, % of what the vine can draw") { Ceiling = 100 };
        soil.Line(
            vine.Season.Tips.Select(day => new ChartPoint(ChartAxis.PlaceOf(day.Date), 100 * day.SoilWaterFraction)), ChartStyle.Line,
            label: "model");
        var last = vine.Season.Tips.LastOrDefault();
        return new ChartSheet(
            Tips, "Growing tips and soil water",
            last is null
                ? "No shoot stands yet."
                : $"On {ChartAxis.DayText(last.Date, isShort: false)} {Measure.Number(100 * last.GrowingFreely, 0)} % of the model's tips "
                    + $"grow freely and its soil holds {Measure.Number(100 * last.SoilWaterFraction, 0)} % of its water; "
                    + (noted.Count == 0 ? "no tip was noted." : "dots are what was noted."),
            Axis(vine), [tips, soil])
        {
            Stages = Stages(vine),
            WhenEmpty = "no shoot yet",
        };
    }

    public static ChartSheet SprayCover(StandingVine vine, Units units)
    {
        var days = new SeasonSeries(vine.Season).Days;
        var panel = new ChartPanel($"{Measure.LeafArea.Unit(units)} of leaf per vine");
        panel.Line(
            days.Select(day => new ChartPoint(ChartAxis.PlaceOf(day.Date), Measure.LeafArea.In(units, day.LeafAreaM2PerVine))),
            ChartStyle.StageLine, isThin: true, label: "all leaf");
        panel.Line(
            days.Select(day => new ChartPoint(
                ChartAxis.PlaceOf(day.Date), day.LeafAreaUnsprayedM2PerVine is { } open ? Measure.LeafArea.In(units, open) : double.NaN)),
            ChartStyle.Line, label: "not covered");
        return new ChartSheet(
            Sprays, "Leaf that came after the last spray", SprayWords.Opening(vine, units), Axis(vine), [panel])
        {
            Stages = [.. vine.Season.Sprays.Select(spray => new StageMark(spray.Label, spray.Date))],
            WhenEmpty = "no leaf yet",
        };
    }

    public static ChartSheet TemperatureIndex(StandingVine vine, IReadOnlyList<MildewDay> days)
    {
        var panel = new ChartPanel("points, 0 to 100") { Ceiling = 100 };
        panel.Line(days.Select(day => new ChartPoint(ChartAxis.PlaceOf(day.Date), day.Points)), ChartStyle.Line);
        if (days.Count > 0)
        {
            panel.Level(ModerateFrom, "moderate above");
            panel.Level(HighFrom, "high above");
        }

        return new ChartSheet(
            Mildew, MildewWords.Title, MildewWords.State(days), Axis(vine), [panel])
        {
            Stages = Stages(vine),
            WhenEmpty = "not counted before budbreak",
        };
    }

    private static ChartAxis Axis(StandingVine vine)
    {
        var from = vine.Season.Summary.Dates.Budbreak ?? vine.AsOf.AddDays(-1);
        return ChartAxis.OfDates(from < vine.AsOf ? from : vine.AsOf.AddDays(-1), vine.AsOf);
    }

    private static IReadOnlyList<StageMark> Stages(StandingVine vine) => new SeasonSeries(vine.Season).Stages;
}
