using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Results;

namespace CanopySim.Files.Comparison;

/// <summary>What a comparison comes to, in sentences made from its numbers.</summary>
public static class ComparisonSentences
{
    private const int MostNamed = 4;

    /// <summary>The sentence that page and terminal open with: when each is ripe.</summary>
    public static string Opening(IReadOnlyList<ComparedOption> options) =>
        options.Count <= MostNamed ? EachRipe(options) : FirstAndLast(options);

    /// <summary>What an option costs or brings beside the first one, in fruit, leaves and what they can send.</summary>
    public static string Cost(ComparedOption option, ComparedOption first, Units units)
    {
        var (here, there) = (option.Summary, first.Summary);
        List<string> parts = [];
        Add(here.Harvest?.YieldTPerHa, there.Harvest?.YieldTPerHa, Measure.YieldPerArea, 1, "fruit");
        Add(here.Canopy?.LeafAreaM2PerM, there.Canopy?.LeafAreaM2PerM, Measure.LeafAreaPerLength, 1,
            "leaf along the canopy");
        Add(here.Harvest?.LeafAreaM2PerKgFruit, there.Harvest?.LeafAreaM2PerKgFruit, Measure.LeafAreaPerFruit, 2,
            "leaf for each weight of fruit");
        Add(here.RipeningCapacityGPerKgD, there.RipeningCapacityGPerKgD, Measure.SugarPerFruit, 1,
            "sugar that the leaves can send the fruit in a day");
        Add(HoursBrowning(here), HoursBrowning(there), Hours, 1, "warm enough for fruit to brown, on the worse side");
        return parts.Count == 0
            ? $"{option.Name}: as much fruit and leaf as {first.Name}, to the digits shown."
            : $"{option.Name} beside {first.Name}: {string.Join("; ", parts)}.";

        void Add(double? value, double? before, Measure measure, int decimals, string what)
        {
            if (value is not { } now || before is not { } then || !double.IsFinite(now - then)) return;
            var text = measure.Text(units, Math.Abs(now - then), decimals);
            if (text.AsSpan().IndexOfAnyInRange('1', '9') < 0) return;
            var percent = Measure.Number(100 * Math.Abs(now - then) / then, 0);
            var share = then > 0 && measure != Hours ? $" ({(now < then ? "−" : "+")}{percent} %)" : "";
            parts.Add($"{text} {(now < then ? "less" : "more")} {what}{share}");
        }
    }

    private static Measure Hours { get; } = new("h", "h", 1);

    private static double? HoursBrowning(SeasonSummary summary) =>
        summary.FruitHeat?.Sides.Max(side => side.HoursAtBrowning);

    /// <summary>Days between the ripe dates of two options in one year, in words; null where one is not ripe.</summary>
    public static string? DaysApart(ComparedOption option, ComparedOption first) => DaysLater(option, first) switch
    {
        null => null,
        0 => "same day",
        1 => "1 day later",
        -1 => "1 day earlier",
        > 0 and var days => $"{days} days later",
        var days => $"{-days} days earlier",
    };

    /// <summary>How many days later an option is ripe than the first, both in one year.</summary>
    public static int? DaysLater(ComparedOption option, ComparedOption first) =>
        option.Summary.Dates.TargetSugar is { } ripe && first.Summary.Dates.TargetSugar is { } before
            ? option.InYearOf(first, ripe).DayNumber - before.DayNumber
            : null;

    private static string EachRipe(IReadOnlyList<ComparedOption> options)
    {
        var parts = new List<string>();
        var previousRipe = false;
        foreach (var option in options)
        {
            if (option.Summary.Dates.TargetSugar is { } ripe)
            {
                var apart = option == options[0] || DaysApart(option, options[0]) is not { } days ? "" : $", {days}";
                parts.Add($"{option.Name}{(previousRipe ? "" : " is ripe")} on {Day(ripe)}{apart}");
                previousRipe = true;
            }
            else
            {
                parts.Add($"{option.Name} does not reach {Measure.Brix(option.Scenario.Season.TargetSugar)}");
                previousRipe = false;
            }
        }

        return string.Join("; ", parts) + ".";
    }

    private static string FirstAndLast(IReadOnlyList<ComparedOption> options)
    {
        var ripe = options.Where(option => option.Summary.Dates.TargetSugar is not null)
            .OrderBy(option => option.InYearOf(options[0], option.Summary.Dates.TargetSugar!.Value)).ToList();
        var unripe = options.Count - ripe.Count;
        if (ripe.Count == 0) return $"None of the {options.Count} options reaches its target.";
        var rest = unripe switch
        {
            0 => "",
            1 => "; one does not reach its target",
            _ => $"; {unripe} do not reach their target",
        };
        var last = ripe.Count == 1 ? "" : $", {ripe[^1].Name} last, on {RipeDay(ripe[^1])}";
        return $"Of {options.Count} options {ripe[0].Name} is ripe first, on {RipeDay(ripe[0])}{last}{rest}.";
    }

    private static string RipeDay(ComparedOption option) => Day(option.Summary.Dates.TargetSugar!.Value);

    private static string Day(DateOnly day) => day.ToString("d MMMM", CultureInfo.InvariantCulture);
}
