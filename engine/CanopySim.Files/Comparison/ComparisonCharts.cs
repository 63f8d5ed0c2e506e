using CanopySim.Files.Charts;
using CanopySim.Results;
using ScottPlot;

namespace CanopySim.Files.Comparison;

/// <summary>
/// Charts with all options in one, each line named at its end. Days of other years stand in the year of the first
/// option.
/// </summary>
public static class ComparisonCharts
{
    public const string Sugar = "compared-sugar";

    public const string Light = "compared-light";

    public const string LeafArea = "compared-leaf-area";

    public const string NetGain = "compared-carbon";

    public const string FruitLight = "compared-light-on-fruit";

    public const string FruitCarbon = "compared-carbon-by-leaf-age";

    public const string RipeningCapacity = "compared-ripening-capacity";

    private const int AgeStepDays = 30;
    private const double LongestAge = 180;

    // Three colors and four patterns tell twelve lines apart; where lines of different patterns coincide, all are seen.
    private static readonly LinePattern[] Patterns = [LinePattern.Solid, LinePattern.Dashed, LinePattern.Dotted,
        LinePattern.DenselyDashed];

    public static IReadOnlyList<ChartPicture> All(IReadOnlyList<ComparedOption> options, Units units) =>
        [.. Sheets(options, units).Select(sheet => sheet.Picture())];

    internal static IEnumerable<ChartSheet> Sheets(IReadOnlyList<ComparedOption> options, Units units)
    {
        var series = options.Select(option => new SeasonSeries(option.Season)).ToList();
        yield return SugarByDate(options, series);
        yield return ByDate(
            options, series, Light, "Light taken up by the leaves",
                "% of the photosynthetically active light (PAR), mean of seven days",
            day => 100 * day.FractionParAbsorbed, ceiling: 100,
            caption: "Share of the light on the block that the leaves take up. At veraison: "
                + $"{AtVeraison(options, day => 100 * day.FractionParAbsorbed, "%", 0)}.");
        yield return ComparedFruitLight.Sheet(options);
        yield return ByDate(
            options, series, LeafArea, "Leaf area of a vine", $"{Measure.LeafArea.Unit(units)} of leaf per vine",
            day => Measure.LeafArea.In(units, day.LeafAreaM2PerVine),
            caption: $"At veraison: {AtVeraison(
                options, day => Measure.LeafArea.In(units, day.LeafAreaM2PerVine), Measure.LeafArea.Unit(units), 1)}.");
        yield return ByDate(
            options, series, NetGain, "Carbon gained by the leaves",
                $"{Measure.SmallMass.Unit(units)} of CO₂ per vine and day, mean of seven days",
            day => Measure.SmallMass.In(units, day.NetAssimilationGCo2PerVine),
            caption: "What the leaves of a vine gain in a day, nights included.");
        yield return CarbonByAge(options);
        yield return ByDate(
            options, series, RipeningCapacity, "Ripening capacity",
            $"g of sugar a day for each {(units == Units.Us ? "pound" : "kg")} of fruit, mean of seven days",
            day => day.RipeningCapacityGPerKgD is { } capacity ? Measure.SugarPerFruit.In(units, capacity) : null,
            whenEmpty: "no fruit to ripen in these seasons",
            caption: "What the leaves could send the fruit each day. On average while it ripened: "
                + $"{Each(options, option => MeanCapacity(option, units))}.");
    }

    private static ChartSheet SugarByDate(IReadOnlyList<ComparedOption> options, IReadOnlyList<SeasonSeries> series)
    {
        var panel = new ChartPanel("Brix");
        for (var i = 0; i < options.Count; i++)
            Draw(panel, options, i, Shifted(options, i, series[i].Of(day => day.SugarBrix)));
        var targets = options.Select(option => option.Scenario.Season.TargetSugar).Distinct().ToList();
        if (!panel.IsEmpty && targets.Count == 1) panel.Level(targets[0], $"target {Measure.Brix(targets[0])}");
        return new ChartSheet(
            Sugar, "Sugar of the fruit",
            panel.IsEmpty
                ? "No sugar was loaded in these seasons."
                : $"Sugar of the fruit from veraison on. At the end: {Each(options, EndSugar)}.",
            AxisOf(options, FromVeraison(options, series)), [panel])
        {
            WhenEmpty = "no sugar loaded in these seasons",
        };
    }

    private static ChartSheet ByDate(
        IReadOnlyList<ComparedOption> options, IReadOnlyList<SeasonSeries> series, string stem, string title,
        string unit,
        Func<DayRow, double?> column, string caption, double? ceiling = null,
        string whenEmpty = "nothing to show for these seasons")
    {
        var panel = new ChartPanel(unit) { Ceiling = ceiling };
        var isFruit = stem == RipeningCapacity;
        for (var i = 0; i < options.Count; i++)
        {
            var points = series[i].Of(column);
            Draw(panel, options, i, Shifted(options, i, stem == LeafArea ? points : SeasonSeries.WeekMean(points)));
        }

        return new ChartSheet(stem, title, caption,
            AxisOf(options, isFruit ? FromVeraison(options, series) : WholeSeason(series)), [panel])
        {
            Stages = CommonStages(options, series),
            WhenEmpty = whenEmpty,
        };
    }

    private static ChartSheet CarbonByAge(IReadOnlyList<ComparedOption> options)
    {
        var panel = new ChartPanel("% of the carbon that leaves gained while the fruit ripened, each ten days of age");
        var end = LongestAge;
        for (var i = 0; i < options.Count; i++)
        {
            if (!Charts.FeedingLeaves.HasFruit(options[i].Summary)) continue;
            var shares = options[i].Summary.RipeningCarbonByLeafAge.Where(share => double.IsFinite(share.Share))
                .OrderBy(share => share.FromD).ToList();
            var points = shares.Select(share => new ChartPoint(MiddleOf(share), 100 * share.Share)).ToList();
            foreach (var point in points) end = Math.Max(end, point.X);
            Draw(panel, options, i, points);
        }

        var caption = panel.IsEmpty
            ? "No leaves fed fruit in these seasons."
            : $"Which leaves fed the fruit: {Each(options, Feeding)}.";
        return new ChartSheet(
            FruitCarbon, "Which leaves fed the fruit", caption,
                ChartAxis.OfDays(end, AgeStepDays, "age of leaf, days"), [panel])
        {
            WhenEmpty = "no fruit was fed",
        };
    }

    private static string EndSugar(ComparedOption option) => option.Summary.Harvest?.SugarBrix is { } brix
        ? $"{Measure.Number(brix, 1)} Brix"
        : "none";

    private static string Feeding(ComparedOption option) => FeedingLeaves.Of(option.Summary) is { } leaves
        ? $"those {leaves.AgesText} gave {leaves.PercentText}"
        : "none";

    private static string MeanCapacity(ComparedOption option, Units units) =>
        option.Summary.RipeningCapacityGPerKgD is { } mean ? Measure.SugarPerFruit.Text(units, mean, 1) : "none";

    // The oldest class is open: ten days of it are drawn.
    private static double MiddleOf(LeafAgeShare share) =>
        0.5 * (share.FromD + Math.Min(share.ToD, share.FromD + FeedingLeaves.WidestClosedClassD));

    internal static uint ColorOf(int option) => ChartStyle.OptionLines[option % ChartStyle.OptionLines.Count];

    internal static LinePattern PatternOf(int option) => Patterns[option % Patterns.Length];

    private static void Draw(ChartPanel panel, IReadOnlyList<ComparedOption> options, int index,
        IEnumerable<ChartPoint> points) =>
        panel.Line(points, ColorOf(index), label: options[index].Name, pattern: PatternOf(index));

    private static IEnumerable<ChartPoint> Shifted(IReadOnlyList<ComparedOption> options, int index,
        IEnumerable<ChartPoint> points) => points
        .Select(point => point with
        {
            X = ChartAxis.PlaceOf(
            options[index].InYearOf(options[0], DateOnly.FromDayNumber((int)point.X)))
        });

    private static ChartAxis AxisOf(IReadOnlyList<ComparedOption> options,
        IReadOnlyList<(DateOnly From, DateOnly To)> ranges)
    {
        var from = ranges.Select((range, i) => options[i].InYearOf(options[0], range.From)).Min();
        var to = ranges.Select((range, i) => options[i].InYearOf(options[0], range.To)).Max();
        return ChartAxis.OfDates(from, to);
    }

    private static List<(DateOnly From, DateOnly To)> WholeSeason(IReadOnlyList<SeasonSeries> series) =>
        [.. series.Select(one =>
            (DateOnly.FromDayNumber((int)one.Axis.Min), DateOnly.FromDayNumber((int)one.Axis.Max)))];

    // Nothing is to be seen of the fruit before it begins to ripen.
    private static List<(DateOnly From, DateOnly To)> FromVeraison(IReadOnlyList<ComparedOption> options,
        IReadOnlyList<SeasonSeries> series) =>
        [.. WholeSeason(series).Select((range, i) =>
            (options[i].Summary.Dates.Veraison is { } veraison && veraison < range.To ? veraison : range.From,
                range.To))];

    /// <summary>Stages that all options reach on the same day; lines of many days would say nothing.</summary>
    private static List<StageMark> CommonStages(IReadOnlyList<ComparedOption> options,
        IReadOnlyList<SeasonSeries> series) =>
    [
        .. series[0].Stages.Where(stage => series.Select((one, i) => (one, i)).All(
            other => other.one.Stages.Any(same =>
                same.Name == stage.Name && options[other.i].InYearOf(options[0], same.Date) == stage.Date))),
    ];

    private static string AtVeraison(IReadOnlyList<ComparedOption> options, Func<DayRow, double> column, string unit,
        int decimals) =>
        Each(options, option => option.Season.Days.FirstOrDefault(day =>
            day.Date == option.Summary.Dates.Veraison) is { } day
            ? $"{Measure.Number(column(day), decimals)} {unit}"
            : "not reached");

    private static string Each(IReadOnlyList<ComparedOption> options, Func<ComparedOption, string> text) =>
        string.Join(", ", options.Select(option => $"{option.Name} {text(option)}"));
}
