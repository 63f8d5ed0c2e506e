using CanopySim.Files.Charts;
using CanopySim.Fitting;
using CanopySim.Numerics;

namespace CanopySim.Files.Forecast;

/// <summary>A forecast in sentences made from its numbers.</summary>
public static class ForecastSentences
{
    // Published for single and for divided canopies: Kliewer & Dokoozlian 2005, Am J Enol Vitic 56:170-181 [m²/kg].
    private static readonly (double From, double To) EnoughSingle = (0.8, 1.2);
    private static readonly (double From, double To) EnoughDivided = (0.5, 0.8);

    // A share below which a chance is told as small [0 to 1].
    private const double Certain = 0.995;

    /// <summary>When the fruit will be ripe: the sentence that a forecast opens with.</summary>
    public static string Opening(ForecastReport report)
    {
        var (range, target) = (report.Forecast.TargetSugar, Measure.Brix(report.TargetSugar));
        if (range.P50 is not { } middle)
        {
            return range.Chance == 0
                ? $"The target of {target} is not reached in any of {report.Forecast.Seasons.Count} seasons."
                : $"The target of {target} is reached in {Percent(range.Chance)} of {report.Forecast.Seasons.Count} seasons only.";
        }

        if (range.P90 is null)
        {
            return $"Ripe on {Date(middle)}, at {target}, if it goes as in the middle of {report.Forecast.Seasons.Count} seasons; "
                + $"in {Percent(1 - range.Chance)} of them the target is not reached.";
        }

        return $"Ripe on {Date(middle)}, at {target}: {Between(range)} in four years of five.";
    }

    /// <summary>Where the vine stands on the day.</summary>
    public static string Standing(ForecastReport report, Units units)
    {
        var now = report.Standing.Season.Days.LastOrDefault();
        if (now is null || now.NodesPerShoot == 0)
            return $"On {Date(report.AsOf)} no leaf has unfolded yet.";
        return $"On {Date(report.AsOf)} shoots are {Measure.Length.Text(units, now.ShootLengthCm, 0)} long with "
            + $"{Measure.Number(now.NodesPerShoot, 1)} nodes, and a vine has "
            + $"{Measure.LeafArea.Text(units, now.LeafAreaM2PerVine, 1)} of leaf.";
    }

    /// <summary>When bloom and veraison come, or came.</summary>
    public static string Stages(ForecastReport report) =>
        $"{Stage("Bloom", report.Forecast.Bloom, report.AsOf)} {Stage("Veraison", report.Forecast.Veraison, report.AsOf)}";

    /// <summary>Which leaves will feed the fruit; empty where nothing ripens.</summary>
    public static string Feeding(ForecastReport report)
    {
        const double Most = 0.55;
        var shares = report.FeedingLeaves;
        if (shares.Count == 0) return "";
        // The narrowest run of classes that gives most of it.
        var (first, last) = (0, shares.Count - 1);
        for (var from = 0; from < shares.Count; from++)
        {
            var sum = 0.0;
            for (var to = from; to < shares.Count; to++)
            {
                sum += shares[to].Share;
                if (sum < Most) continue;
                if (to - from < last - first) (first, last) = (from, to);
                break;
            }
        }

        var given = shares.Skip(first).Take(last - first + 1).Sum(share => share.Share);
        return $"These leaves will feed the fruit: those {shares[first].FromD} to {shares[last].ToD} days old give {Percent(given)} of the sugar.";
    }

    /// <summary>Whether enough young, lit leaf is on the way, with the figures by which it is judged.</summary>
    public static string EnoughLeaf(ForecastReport report, Units units)
    {
        var perFruit = report.Of(season => season.Summary.Harvest?.LeafAreaM2PerKgFruit);
        var young = report.Of(season => season.YoungLeaf?.ShareOfArea);
        var light = report.Of(season => season.YoungLeaf?.ShareOfLight);
        var capacity = report.Of(season => season.Summary.RipeningCapacityGPerKgD);
        if (perFruit is not { } leaf || young is not { } share || light is not { } lit)
            return "Veraison is not reached, so nothing can be said of the leaves that ripen the fruit.";
        var isDivided = Training.TrellisLayout.CanopyMetersPerRowMeter(report.Scenario.Trellis) > 1;
        var enough = isDivided ? EnoughDivided : EnoughSingle;
        var verdict = leaf.P50 < enough.From ? "There will be little leaf for the fruit"
            : leaf.P10 < enough.From ? "There may be little leaf for the fruit"
            : leaf.P50 > enough.To ? "There will be more leaf than the fruit needs" : "There will be leaf enough for the fruit";
        var sends = capacity is { } sent
            ? $" The leaves could send {Measure.SugarPerFruit.Text(units, sent.P50, 1)} of sugar a day to the fruit."
            : "";
        return $"{verdict}: {Measure.LeafAreaPerFruit.Text(units, leaf.P50, 2)} at ripeness ({Measure.LeafAreaPerFruit.Text(units, leaf.P10, 2)} to "
            + $"{Measure.LeafAreaPerFruit.Text(units, leaf.P90, 2)} in four years of five); a {(isDivided ? "divided" : "single")} canopy needs "
            + $"{Measure.LeafAreaPerFruit.Text(units, enough.From, 1)} to {Measure.LeafAreaPerFruit.Text(units, enough.To, 1)} (Kliewer & Dokoozlian 2005). "
            + $"At veraison {Percent(share.P50)} of the leaf area will be younger than {AheadSeason.YoungDays} days, and take up {Percent(lit.P50)} of the light.{sends}";
    }

    /// <summary>Which option changes the day of ripeness most; empty where none was tried.</summary>
    public static string Options(ForecastReport report)
    {
        var tried = report.Forecast.Options.Where(option => option.DaysLater.Count > 0).ToList();
        if (tried.Count == 0) return "";
        var most = tried.MaxBy(option => Math.Abs(Quantile.Of(option.DaysLater, 0.5)))!;
        var days = Quantile.Of(most.DaysLater, 0.5);
        return Math.Round(Math.Abs(days)) == 0
            ? "None of what can still be done moves the day of ripeness by more than half a day, against waiting."
            : $"Of what can still be done, to {most.Option.Words} on {Date(most.Option.Day)} moves ripeness most: {Later(days)}.";
    }

    /// <summary>Cells of a table of the options: what, when, ripe, yield, sugar that leaves could send.</summary>
    public static IReadOnlyList<string> Row(OptionAhead option) => option.Pairs.Count == 0
        ? [option.Option.Words, Date(option.Option.Day), "not possible", "", ""]
        : [
            option.Option.Words, Date(option.Option.Day), Spread(option.DaysLater, Signed, " d"), Spread(option.Yield, Change, ""),
            Spread(option.RipeningCapacity, Change, ""),
        ];

    public static IReadOnlyList<string> OptionHeads { get; } = ["option", "day", "ripe", "yield", "sugar the leaves could send"];

    /// <summary>What the ranges hold and what they do not.</summary>
    public static string Basis(ForecastReport report)
    {
        var forecast = report.Forecast;
        var outlook = report.Input.HasOutlook ? $", the outlook to {Date(forecast.WeatherTo)}" : "";
        return $"{forecast.Seasons.Count} vines that agree with the notes, each in weather of its own: recorded to {Date(report.AsOf)}{outlook}, then made like "
            + $"the days of {report.Input.Record.FirstDay.Year} to {report.AsOf.Year}, seasons warmer or cooler by "
            + $"{Measure.Number(forecast.SpreadBetweenSeasons, 1)} K (standard deviation) besides"
            + (forecast.SeasonsOfRecord < 4 ? ", which is assumed: the record is short. " : ". ")
            + "Disease, hail, frost after today and work that is not noted or planned are not in it. How far vines may differ is assumed.";
    }

    /// <summary>A stage's range in a sentence.</summary>
    public static string Stage(string name, StageRange range, DateOnly asOf)
    {
        if (range.P50 is not { } middle) return $"{name} is not reached in {Percent(1 - range.Chance)} of the seasons.";
        var verb = range.P90 is { } last && last <= asOf ? "was" : "comes";
        if (range.P90 is null || range.P10 is null)
            return $"{name} {verb} on {Date(middle)} in the middle of all seasons; in {Percent(1 - range.Chance)} it is not reached.";
        return range.P10 == range.P90 ? $"{name} {verb} on {Date(middle)}." : $"{name} {verb} on {Date(middle)}, {Between(range)}.";
    }

    internal static string Date(DateOnly day) => NoteEffectWords.DayText(day);

    internal static string Percent(double share) => share is > 0 and < 0.005 ? "less than 1 %"
        : share is > Certain and < 1 ? "over 99 %" : $"{Measure.Number(100 * share, 0)} %";

    private static string Between(StageRange range) => $"{Date(range.P10!.Value)} to {Date(range.P90!.Value)}";

    private static string Later(double days) => days < 0
        ? $"{Days(-days)} earlier than by waiting" : $"{Days(days)} later than by waiting";

    private static string Days(double days) => Math.Round(days) == 1 ? "1 day" : $"{Measure.Number(days, 0)} days";

    private static string Spread(IReadOnlyList<double> sorted, Func<double, string> text, string unit) => sorted.Count == 0 ? "–"
        : $"{text(Quantile.Of(sorted, 0.5))}{unit} ({text(Quantile.Of(sorted, 0.1))} to {text(Quantile.Of(sorted, 0.9))})";

    private static string Signed(double value) =>
        Math.Round(value) == 0 ? "0" : $"{(value < 0 ? "−" : "+")}{Measure.Number(Math.Abs(value), 0)}";

    private static string Change(double ratio) => $"{Signed(100 * (ratio - 1))} %";
}
