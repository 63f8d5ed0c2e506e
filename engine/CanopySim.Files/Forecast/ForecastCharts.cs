using CanopySim.Files.Charts;
using CanopySim.Fitting;

namespace CanopySim.Files.Forecast;

/// <summary>All charts of a forecast.</summary>
public static class ForecastCharts
{
    public const string Sugar = "forecast-sugar";

    public const string Chance = "forecast-chance";

    public const string ShootLength = "forecast-shoot-length";

    public const string LeafArea = "forecast-leaf-area";

    public const string FeedingLeaves = "forecast-carbon-by-leaf-age";

    public static IReadOnlyList<ChartPicture> All(ForecastContent content) => [.. Sheets(content).Select(sheet => sheet.Picture())];

    internal static IEnumerable<ChartSheet> Sheets(ForecastContent content)
    {
        var units = content.Units;
        var marks = Marks(content);
        yield return FanCharts.Fan(
            Sugar, "Sugar of the fruit", "Brix", SugarSaying(content), content.SugarBrix, content.NotedSugars, marks, content.AsOf,
            (content.TargetBrix, $"target {Measure.Brix(content.TargetBrix)}"));
        yield return FanCharts.Chance(
            Chance, "Chance of the target by date",
            content.Target.Chance > 0
                ? $"Share of the seasons that have reached {Measure.Brix(content.TargetBrix)} by each day; "
                    + $"{ForecastSentences.Percent(content.Target.Chance)} reach it at all."
                : $"No season reaches {Measure.Brix(content.TargetBrix)}.",
            content.Target.Chance > 0 ? content.ChanceOfTarget : [], [.. marks.Where(mark => mark.Name == "ripe")],
            content.AsOf);
        yield return FanCharts.Fan(
            ShootLength, "Length of a mean shoot", $"length of a shoot, {Measure.Length.Unit(units)}",
            Ahead(content, content.ShootLengthCm, Measure.Length, 0, "A mean shoot"), In(units, Measure.Length, content.ShootLengthCm),
            [.. content.NotedLengthsCm.Select(note => (note.Date, Measure.Length.In(units, note.Value)))], marks,
            content.AsOf);
        yield return FanCharts.Fan(
            LeafArea, "Leaf area of a vine", $"{Measure.LeafArea.Unit(units)} of leaf per vine",
            Ahead(content, content.LeafAreaM2PerVine, Measure.LeafArea, 1, "The leaf area of a vine"),
            In(units, Measure.LeafArea, content.LeafAreaM2PerVine), [], marks, content.AsOf);
        yield return FanCharts.Ages(
            FeedingLeaves, "Leaves that will feed the fruit",
            ForecastSentences.Feeding(content) ?? "No leaves will feed ripening fruit.",
            [.. content.FeedingLeaves.Select(age => (age.FromD, age.ToD, age.P10, age.Mean, age.P90))]);
        yield return StandingCharts.TipsAndWater(content.Vine, content.Tips);
        if (content.Vine.Season.Sprays.Count > 0) yield return StandingCharts.SprayCover(content.Vine, units);
        yield return StandingCharts.TemperatureIndex(content.Vine, MildewWords.Days(content.Vine));
    }

    // The stages that have passed are known; those ahead stand at their medians.
    private static List<StageMark> Marks(ForecastContent content)
    {
        var dates = content.Vine.Season.Summary.Dates;
        List<StageMark> marks = [];
        Add("budbreak", dates.Budbreak);
        Add("bloom", dates.Bloom ?? content.Bloom.P50);
        Add("veraison", dates.Veraison ?? content.Veraison.P50);
        Add("ripe", dates.TargetSugar ?? content.Target.P50);
        Add("today", content.AsOf);
        return [.. marks.OrderBy(mark => mark.Date)];

        void Add(string name, DateOnly? date)
        {
            if (date is { } day) marks.Add(new StageMark(name, day));
        }
    }

    private static string SugarSaying(ForecastContent content)
    {
        var known = content.SugarBrix.Where(day => double.IsFinite(day.P50)).ToList();
        if (known.Count == 0) return "No fruit ripens in half of the seasons";
        var last = known[^1];
        return $"Sugar of the fruit, {Measure.Number(last.P50, 1)} Brix on {ForecastSentences.Day(last.Date)}; ripe fruit stays at the target";
    }

    private static string Ahead(
        ForecastContent content, IReadOnlyList<FanDay> fan, Measure measure, int decimals, string what)
    {
        var known = fan.Where(day => double.IsFinite(day.P50)).ToList();
        if (known.Count == 0) return $"{what}, of which nothing is known yet";
        var most = known.MaxBy(day => day.P50);
        return $"{what} comes to {measure.Text(content.Units, most.P50, decimals)}";
    }

    private static List<FanDay> In(Units units, Measure measure, IReadOnlyList<FanDay> fan) =>
    [
        .. fan.Select(day => new FanDay(
            day.Date, measure.In(units, day.P10), measure.In(units, day.P25), measure.In(units, day.P50),
            measure.In(units, day.P75), measure.In(units, day.P90))),
    ];
}
