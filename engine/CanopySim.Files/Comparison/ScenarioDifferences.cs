using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Files.Scenarios;

namespace CanopySim.Files.Comparison;

/// <summary>A key that the scenarios do not all give the same value, or a list of work that differs.</summary>
/// <param name="Key">Dotted key.</param>
/// <param name="Values">
/// Its value in each option, in the reader's words; "left out" where there is none, "none" of work.
/// </param>
public sealed record ScenarioDifference(string Key, IReadOnlyList<string> Values);

/// <summary>What the compared scenarios say differently.</summary>
public static class ScenarioDifferences
{
    private const string LeftOut = "left out";
    private const string NoWork = "none";
    private const int MostSaid = 4;

    /// <summary>The keys that differ, in the order of the scenario; names of blocks aside.</summary>
    public static IReadOnlyList<ScenarioDifference> Of(
        IReadOnlyList<ScenarioDocument> scenarios, Units units = Units.Metric)
    {
        var values = scenarios.Select(scenario => scenario.Values.ToDictionary(value => value.Key)).ToList();
        List<ScenarioDifference> differences = [];
        var keys = KeysInOrder(scenarios);
        foreach (var key in keys.Where(key => key != "name"))
        {
            if (WorkList(key) is { } list)
            {
                if (differences.All(one => one.Key != list)) AddWork(differences, list, scenarios, units);
                continue;
            }

            var texts = values.Select(option => option.GetValueOrDefault(key)?.Value ?? LeftOut).ToList();
            if (texts.Distinct().Count() < 2
                || keys.Any(inner => inner.StartsWith(key + ".", StringComparison.Ordinal))) continue;
            differences.Add(new ScenarioDifference(key, [.. texts.Select((text, i) =>
                text == LeftOut ? text : DifferencePhrases.Value(key, text, scenarios[i].Scenario, units))]));
        }

        return differences;
    }

    /// <summary>
    /// What a scenario says differently from another, in a sentence; of many differences the first few.
    /// </summary>
    public static string InWords(ComparedOption option, ComparedOption first, Units units = Units.Metric)
    {
        var differences = Of([first.Document, option.Document], units);
        var said = differences.Take(MostSaid).Select(difference => WorkList(difference.Key) is { } list
            ? Work(list, option.Scenario, first.Scenario, units)
            : DifferencePhrases.Of(
                difference.Key, Known(difference.Values[1]), Known(difference.Values[0]))).ToList();
        if (differences.Count > MostSaid) said.Add($"{differences.Count - MostSaid} more in the table below");
        return said.Count == 0 ? $"{option.Name} does not differ from {first.Name} but by its name."
            : $"{option.Name}: {string.Join("; ", said)}.";
    }

    private static string? Known(string value) => value == LeftOut ? null : value;

    // The list that a key of work belongs to; null for other keys.
    private static string? WorkList(string key) => WorkPhrases.Lists.Select(list => list.Key)
        .FirstOrDefault(list => key == list || key.StartsWith(list + ".", StringComparison.Ordinal));

    private static List<string> Steps(string list, Scenario scenario, Units units) =>
        [.. WorkPhrases.Lists.First(one => one.Key == list).Steps(scenario).Select(step => WorkPhrases.Of(step, units))];

    private static void AddWork(
        List<ScenarioDifference> differences, string list, IReadOnlyList<ScenarioDocument> scenarios, Units units)
    {
        var texts = scenarios.Select(scenario => string.Join("; ", Steps(list, scenario.Scenario, units))).ToList();
        if (texts.Distinct().Count() > 1)
            differences.Add(new ScenarioDifference(list, [.. texts.Select(text => text.Length > 0 ? text : NoWork)]));
    }

    // What is done here and not there, then what is done there and not here.
    private static string Work(string list, Scenario here, Scenario there, Units units)
    {
        var (steps, before) = (Steps(list, here, units), Steps(list, there, units));
        var (more, less) = (steps.Except(before).ToList(), before.Except(steps).ToList());
        if (more.Count == 1 && less.Count == 1) return $"{more[0]}, instead of {less[0]}";
        return string.Join(", ", [.. more, .. less.Select(step => $"left undone: {step}")]);
    }

    /// <summary>
    /// A sentence for each option that says the same as one before it, so that nobody looks for what differs.
    /// </summary>
    public static IEnumerable<string> Twins(IReadOnlyList<ScenarioDocument> scenarios, IReadOnlyList<string> names)
    {
        for (var later = 1; later < scenarios.Count; later++)
        {
            for (var before = 0; before < later; before++)
            {
                if (Of([scenarios[before], scenarios[later]]).Count > 0) continue;
                yield return $"{names[later]} and {names[before]} do not differ but by their names; "
                    + "their seasons are the same.";
                break;
            }
        }
    }

    /// <summary>A key in short, its last word first; where it belongs stands below.</summary>
    public static string Short(string key)
    {
        var parts = Said(key).Split(", ");
        var name = char.ToUpperInvariant(parts[^1][0]) + parts[^1][1..];
        return parts.Length == 1 ? name : $"{name}\n{string.Join(", ", parts[..^1])}";
    }

    /// <summary>A key as people say it: "canopy work, topping 1, height".</summary>
    public static string Said(string key) => string.Join(", ", key.Split('.')
        .Aggregate(new List<string>(), (parts, part) =>
        {
            if (int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && parts.Count > 0)
                parts[^1] += FormattableString.Invariant($" {index + 1}");
            else parts.Add(part.Replace('_', ' '));
            return parts;
        }));

    /// <summary>True where all options have the same weather file, year and seed of the weather.</summary>
    public static bool HaveOneWeather(IReadOnlyList<ComparedOption> options) => options
        .Select(option => (Path.GetFullPath(option.Document.WeatherPath), option.Scenario.Weather.Seed,
            option.FirstYear))
        .Distinct().Count() == 1;

    // A key that only one scenario has stands behind the key that it follows there.
    private static List<string> KeysInOrder(IReadOnlyList<ScenarioDocument> scenarios)
    {
        List<string> keys = [];
        foreach (var scenario in scenarios)
        {
            var at = 0;
            foreach (var value in scenario.Values)
            {
                var known = keys.IndexOf(value.Key);
                if (known < 0) keys.Insert(at++, value.Key);
                else at = known + 1;
            }
        }

        return keys;
    }
}
