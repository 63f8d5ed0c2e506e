using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Results;

namespace CanopySim.Files.Forecast;

/// <summary>A forecast in sentences made from its numbers.</summary>
public static class ForecastSentences
{
    /// <summary>The sentence to open with: when the fruit is ripe, with the range of four of five members.</summary>
    public static string Opening(ForecastReport report)
    {
        var (target, brix) = (report.Target, Measure.Brix(report.TargetBrix));
        return target switch
        {
            { Chance: 0 } => $"The fruit does not reach {brix} in any of {report.Members} seasons ahead.",
            { P50: null } => $"The fruit reaches {brix} in {Percent(target.Chance)} of {report.Members} seasons ahead, so rather not.",
            { P50: { } half, P10: { } first, P90: { } last } when half >= report.AsOf =>
                $"Ripe ({brix}) on {SeasonSentences.Date(half)}, from {Day(first)} to {Day(last)} in four seasons of five.",
            { P50: { } half } when half < report.AsOf => $"Ripe since {SeasonSentences.Date(half)}: the fruit has reached {brix}.",
            { P50: { } half, P10: { } first } =>
                $"Ripe ({brix}) on {SeasonSentences.Date(half)}, on {Day(first)} at the earliest in nine seasons of ten; "
                    + $"{Percent(1 - target.Chance)} do not get there.",
            _ => $"The fruit reaches {brix} in {Percent(target.Chance)} of {report.Members} seasons ahead.",
        };
    }

    /// <summary>Where the vine stands on the day of the forecast.</summary>
    public static string Standing(ForecastReport report)
    {
        var units = report.Units;
        if (report.Vine.Season.Days.LastOrDefault() is not { } day || report.Vine.Season.Summary.Dates.Budbreak is null)
            return $"On {SeasonSentences.Date(report.AsOf)} the buds have not broken.";
        var sugar = day.SugarBrix is { } brix ? $", the fruit at {Measure.Number(brix, 1)} Brix" : "";
        return $"On {SeasonSentences.Date(report.AsOf)} the vine that fits the notes best has shoots of "
            + $"{Measure.Length.Text(units, day.ShootLengthCm, 0)} with {Measure.Number(day.NodesPerShoot, 0)} nodes and "
            + $"{Measure.LeafArea.Text(units, day.LeafAreaM2PerVine, 1)} of leaf{sugar}.";
    }

    /// <summary>Which leaves will feed the fruit, from the medians; null where none will.</summary>
    public static string? Feeding(ForecastReport report)
    {
        var shares = report.FeedingLeaves.Select(age => new LeafAgeShare(age.FromD, age.ToD, age.P50)).ToList();
        return Charts.FeedingLeaves.Of(shares) is { } leaves
            ? $"Leaves {leaves.AgesText} will give {leaves.PercentText} of the sugar."
            : null;
    }

    /// <summary>A day and its range as cells: half, four of five, chance.</summary>
    public static IReadOnlyList<string> Row(StageOutlook stage) =>
    [
        stage.Name, stage.P50 is { } half ? SeasonSentences.Date(half) : "not by half of the seasons",
        (stage.P10, stage.P90) switch
        {
            ({ } first, { } last) when first == last => Day(first),
            ({ } first, { } last) => $"{Day(first)} to {Day(last)}",
            ({ } first, null) => $"{Day(first)} or later, not by nine of ten",
            _ => "–",
        },
        Percent(stage.Chance),
    ];

    internal static string Percent(double share) => $"{Measure.Number(100 * share, 0)} %";

    internal static string Day(DateOnly date) => ChartAxis.DayText(date, isShort: false);
}
