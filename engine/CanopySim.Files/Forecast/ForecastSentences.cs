using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Fitting;
using CanopySim.Results;

namespace CanopySim.Files.Forecast;

/// <summary>A forecast in sentences made from its numbers.</summary>
public static class ForecastSentences
{
    /// <summary>The sentence to open with: when the fruit is ripe, with the range of four of five members.</summary>
    public static string Opening(ForecastContent content)
    {
        var (target, brix) = (content.Target, Measure.Brix(content.TargetBrix));
        return target switch
        {
            { Chance: 0 } => $"The fruit does not reach {brix} in any of {content.Members} seasons ahead.",
            { P50: null } => $"The fruit reaches {brix} in {Percent(target.Chance)} of {content.Members} seasons ahead, so rather not.",
            { P50: { } half, P10: { } first, P90: { } last } when half >= content.AsOf =>
                $"Ripe ({brix}) on {SeasonSentences.Date(half)}, {Span(first, last)} in four seasons of five.",
            { P50: { } half } when half < content.AsOf => $"Ripe since {SeasonSentences.Date(half)}: the fruit has reached {brix}.",
            { P50: { } half, P10: { } first } =>
                $"Ripe ({brix}) on {SeasonSentences.Date(half)}, on {Day(first)} at the earliest in nine seasons of ten; "
                    + $"{Percent(1 - target.Chance)} do not get there.",
            _ => $"The fruit reaches {brix} in {Percent(target.Chance)} of {content.Members} seasons ahead.",
        };
    }

    /// <summary>Where the vines stand on the day of the forecast.</summary>
    public static string Standing(ForecastContent content)
    {
        var units = content.Units;
        var day = SeasonSentences.Date(content.AsOf);
        if (content.Vine.Season.Summary.Dates.Budbreak is null) return $"On {day} the buds have not broken.";
        if (On(content.ShootLengthCm, content.AsOf) is not { } length || On(content.LeafAreaM2PerVine, content.AsOf) is not { } area)
            return $"On {day} some vines have no shoots yet.";
        var sugar = On(content.SugarBrix, content.AsOf) is { } brix ? $", and fruit of {Range(brix, value => value, 1)} Brix" : "";
        return $"On {day} the vines have shoots of {Range(length, value => Measure.Length.In(units, value), 0)} "
            + $"{Measure.Length.Unit(units)} and {Range(area, value => Measure.LeafArea.In(units, value), 1)} "
            + $"{Measure.LeafArea.Unit(units)} of leaf each{sugar}, in brackets four of five.";
    }

    /// <summary>Which leaves will feed the fruit, from the means; null where none will.</summary>
    public static string? Feeding(ForecastContent content)
    {
        var shares = content.FeedingLeaves.Select(age => new LeafAgeShare(age.FromD, age.ToD, age.Mean)).ToList();
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
            ({ } first, { } last) => Span(first, last),
            ({ } first, null) => $"{Day(first)} or later, not by nine of ten",
            _ => "–",
        },
        Percent(stage.Chance),
    ];

    /// <summary>Leaf at veraison, and how much of it is young.</summary>
    public static string AtVeraison(Tenths area, Tenths young, Units units)
    {
        var unit = Measure.LeafArea.Unit(units);
        return $"At veraison a vine has {Area(area.P50)} {unit} of leaf ({Area(area.P10)} to {Area(area.P90)}), "
            + $"{Percent(young.P50)} of it younger than {AheadSeason.YoungDays} days ({Percent(young.P10)} to {Percent(young.P90)}).";

        string Area(double value) => Measure.Number(Measure.LeafArea.In(units, value), 1);
    }

    /// <summary>Days later as a cell: "4 days earlier (7 to 1 earlier)".</summary>
    public static string Later(Tenths? days)
    {
        if (days is not { } range) return "not ripe both ways";
        return $"{Signed(range.P50)} d ({Signed(range.P10)} to {Signed(range.P90)})";

        static string Signed(double value) => Math.Round(value) switch
        {
            > 0 => $"+{Measure.Number(value, 0)}",
            _ => Measure.Number(value, 0),
        };
    }

    /// <summary>A ratio as a change: "−28 % (−31 to −24)".</summary>
    public static string Change(Tenths? ratio)
    {
        if (ratio is not { } range) return "–";
        return $"{Signed(range.P50)} % ({Signed(range.P10)} to {Signed(range.P90)})";

        static string Signed(double value) => Math.Round(100 * (value - 1)) switch
        {
            > 0 => $"+{Measure.Number(100 * (value - 1), 0)}",
            _ => Measure.Number(100 * (value - 1), 0),
        };
    }

    /// <summary>Two days: "8 to 29 September", "28 August to 3 September", or the one that both are.</summary>
    public static string Span(DateOnly first, DateOnly last) =>
        first == last ? Day(first)
        : first.Month == last.Month && first.Year == last.Year ? $"{first.Day} to {Day(last)}"
        : $"{Day(first)} to {Day(last)}";

    private static FanDay? On(IReadOnlyList<FanDay> fan, DateOnly date) =>
        fan.Where(day => day.Date == date && double.IsFinite(day.P50)).Select(day => (FanDay?)day).FirstOrDefault();

    private static string Range(FanDay day, Func<double, double> inUnits, int decimals)
    {
        var (low, middle, high) = (Number(day.P10), Number(day.P50), Number(day.P90));
        return low == high ? middle : $"{middle} ({low} to {high})";

        string Number(double value) => Measure.Number(inUnits(value), decimals);
    }

    internal static string Percent(double share) => $"{Measure.Number(100 * share, 0)} %";

    internal static string Day(DateOnly date) => ChartAxis.DayText(date, isShort: false);
}
