using System.Globalization;
using CanopySim.Files.Batch;
using CanopySim.Files.Report;
using Spectre.Console;

namespace CanopySim.Runner.Commands;

/// <summary>What <c>canopysim check</c> prints of a plan.</summary>
public static class PlanUnderstood
{
    private const int ItemsShown = 3;

    public static void Print(string path)
    {
        var plan = PlanFile.Read(path);
        var items = new PlanItems(plan);
        new BatchWeather(plan, kept: 1).CheckAll(items);
        Console.WriteLine($"{path}: {plan.Name}");
        Console.WriteLine($"{CountWords(plan, items)}; {plan.Quality.ToString().ToLowerInvariant()} quality"
            + (plan.Until is { } last ? string.Create(CultureInfo.InvariantCulture, $", until {last.Month:00}-{last.Day:00}") : "")
            + string.Create(CultureInfo.InvariantCulture, $"; {items.Shards} shards of {plan.ItemsPerShard}"));
        foreach (var scenario in plan.Scenarios) Console.WriteLine($"scenario {scenario.Label}: {scenario.Document.Path}");
        PrintVaried(plan);
        foreach (var number in Shown(items.Count)) Console.WriteLine(ItemWords(plan, items.Item(number)));
        foreach (var scenario in plan.Scenarios)
        {
            Console.WriteLine($"{scenario.Label}:");
            CheckCommand.PrintValues(scenario.Document.Values);
        }
    }

    private static string CountWords(BatchPlan plan, PlanItems items)
    {
        List<string> factors = [Count(plan.Scenarios.Count, "scenario"), Count(plan.Weather.Count, "season", "seasons of weather", "season of weather")];
        factors.AddRange(plan.Varied.Where(key => key.Distribution is null).Select(key => $"{key.Values.Count} of {key.Key}"));
        if (plan.Design is { } design)
            factors.Add($"{design.Count(plan.Varied.Count(key => key.Distribution is not null))} points ({KindWords(design)})");
        if (plan.Replicates > 1) factors.Add($"{plan.Replicates} replicates");
        return $"{string.Join(" × ", factors)} = {Count(items.Count, "season")}";
    }

    private static string KindWords(PlanDesign design) => design.Kind switch
    {
        DesignKind.Random => "random",
        DesignKind.LatinHypercube => "latin_hypercube",
        DesignKind.SobolSequence => "sobol_sequence",
        DesignKind.Morris => "morris",
        _ => "saltelli",
    };

    private static string Count(int count, string one, string? many = null, string? single = null) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? single ?? one : many ?? one + "s")}");

    // The mark is that of the value which the key has without the plan: how sure what is varied was before.
    private static void PrintVaried(BatchPlan plan)
    {
        if (plan.Varied.Count == 0) return;
        var table = new Table().Border(TableBorder.None)
            .AddColumn("varied key", column => column.NoWrap()).AddColumns("how", "without the plan", "mark", "source");
        foreach (var key in plan.Varied)
        {
            var known = plan.Scenarios[0].Document.Values.FirstOrDefault(value => value.Key == key.Key);
            table.AddRow(
                Markup.Escape(key.Key), Markup.Escape(key.Words), Markup.Escape(known?.Value ?? ""),
                known is null ? "" : MarkWords.Of(known.Mark), Markup.Escape(known?.Source ?? ""));
        }

        AnsiConsole.Write(table);
    }

    private static IEnumerable<int> Shown(int count) =>
        Enumerable.Range(1, Math.Min(ItemsShown, count)).Concat(Enumerable.Range(count - ItemsShown + 1, ItemsShown)).Where(number => number >= 1).Distinct();

    private static string ItemWords(BatchPlan plan, PlanItem item)
    {
        var weather = plan.Weather[item.Weather];
        List<string> words = [plan.Scenarios[item.Scenario].Label];
        if (weather.File is { } file) words.Add(Path.GetFileName(file));
        if (weather.Year is { } year) words.Add(year.ToString(CultureInfo.InvariantCulture));
        if (weather.Seed is { } like) words.Add(string.Create(CultureInfo.InvariantCulture, $"weather seed {like}"));
        words.Add(string.Create(CultureInfo.InvariantCulture, $"seed {item.Seed}"));
        words.AddRange(item.Values.Select((value, key) => $"{plan.Varied[key].Key} {value.Text}"));
        return string.Create(CultureInfo.InvariantCulture, $"item {item.Number}: {string.Join(", ", words)}");
    }
}
