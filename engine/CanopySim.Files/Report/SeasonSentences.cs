using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Results;

namespace CanopySim.Files.Report;

/// <summary>What a season comes to, in sentences made from its numbers.</summary>
public static class SeasonSentences
{
    /// <summary>
    /// The sentence that a report opens with: which leaves fed the fruit, and what they could send it.
    /// </summary>
    public static string Opening(SeasonResult season, Units units)
    {
        var summary = season.Summary;
        if (summary.Dates.Veraison is null) return NotReached(summary);
        if (!FeedingLeaves.HasFruit(summary)) return "No leaves fed fruit this season: the vine carried none.";
        var feeding = FeedingLeaves.Of(summary) is { } leaves
            ? $"These leaves fed the fruit: those {leaves.AgesText} gave {leaves.PercentText} of the sugar"
            : "No leaves fed the fruit from veraison on: together they gained no carbon";
        return summary.RipeningCapacityGPerKgD is { } capacity && double.IsFinite(capacity)
            ? $"{feeding}; the leaves could send {CapacityText(capacity, units)}."
            : $"{feeding}.";
    }

    /// <summary>Whether and when the fruit was ripe.</summary>
    public static string Ripeness(SeasonResult season, double targetBrix)
    {
        var dates = season.Summary.Dates;
        var target = Measure.Brix(targetBrix);
        if (dates.TargetSugar is { } ripe)
        {
            var after = dates.Veraison is { } veraison ? $", {ripe.DayNumber - veraison.DayNumber} days after veraison"
                : "";
            return $"Ripe on {Date(ripe)}: the fruit reached the target of {target}{after}.";
        }

        var stood = season.Summary.Harvest?.SugarBrix is { } brix && double.IsFinite(brix)
            ? $"the fruit stood at {Measure.Number(brix, 1)} Brix when the season ended on {Date(dates.End)}"
            : $"the season ended on {Date(dates.End)}";
        return $"The target of {target} was not reached: {stood} ({Reason(season.Summary)}).";
    }

    /// <summary>
    /// Why the season ended, in words; a reason without words of its own is said as the summary says it.
    /// </summary>
    public static string Reason(SeasonSummary summary) => summary.EndReason switch
    {
        "harvest" => "harvested",
        "season_over" => "the last day of the season or of the weather",
        "until" => "the last day that was asked for",
        var reason => reason.Replace('_', ' '),
    };

    public static string Date(DateOnly date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>The year of the season, or both where it crosses the new year.</summary>
    public static string Year(SeasonResult season)
    {
        var end = season.Summary.Dates.End.Year;
        var start = season.Summary.Dates.Budbreak?.Year ?? end;
        return start == end ? $"{end}" : $"{start}/{end % 100:00}";
    }

    private static string CapacityText(double gramsPerKilogram, Units units) => units == Units.Us
        ? $"{Measure.Number(Measure.SugarPerFruit.In(Units.Us, gramsPerKilogram), 1)} g of sugar a day to each pound "
            + $"of fruit ({Measure.Number(gramsPerKilogram, 1)} g to each kilogram)"
        : $"{Measure.Number(gramsPerKilogram, 1)} g of sugar a day to each kilogram of fruit";

    private static string NotReached(SeasonSummary summary)
    {
        var end = $"the season ended on {Date(summary.Dates.End)} ({Reason(summary)})";
        return summary.Dates switch
        {
            { Budbreak: null } => $"No leaves ripened fruit: the buds had not broken when {end}.",
            { Bloom: null, Budbreak: { } budbreak } =>
                $"No leaves ripened fruit: bloom was not reached before {end}; the buds had broken on "
                    + $"{Date(budbreak)}.",
            { Bloom: { } bloom } =>
                $"No leaves ripened fruit: veraison was not reached before {end}; the vine had bloomed on "
                    + $"{Date(bloom)}.",
        };
    }
}
