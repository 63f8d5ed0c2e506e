using System.ComponentModel;
using System.Globalization;
using CanopySim.Files;
using CanopySim.Files.Charts;
using CanopySim.Files.Comparison;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary>What every command that reads a scenario takes.</summary>
public class ScenarioSettings : CommandSettings
{
    [CommandOption("--set <KEY=VALUE>")]
    [Description("Gives a key another value, as rows.spacing=2.2m; may be repeated.")]
    public string[] Set { get; init; } = [];

    [CommandOption("--seed <N>")]
    [Description("Seed of what differs by chance; the scenario's own by default.")]
    public string? Seed { get; init; }

    /// <summary>The overrides, the seed among them.</summary>
    public IReadOnlyList<string> Overrides => Seed switch
    {
        null => Set,
        _ when ulong.TryParse(Seed, NumberStyles.None, CultureInfo.InvariantCulture, out var seed) =>
            [.. Set, $"seed={seed}"],
        _ => throw new InputError(new InputPlace("--seed"), InputError.Quote(Seed), "a whole number from 0"),
    };
}

/// <summary>What every command that computes takes.</summary>
public class ComputeSettings : ScenarioSettings
{
    [CommandOption("--out <DIR>")]
    [Description("Results folder; results/<scenario> by default. An existing folder is replaced only if it holds "
        + "results of ours.")]
    public string? Out { get; init; }

    [CommandOption("--quality <LEVEL>")]
    [Description("draft, standard (default) or fine.")]
    public string QualityText { get; init; } = "standard";

    [CommandOption("--threads <N>")]
    [Description("Threads; all cores by default. Results are the same for any number.")]
    public string? Threads { get; init; }

    [CommandOption("--units <SYSTEM>")]
    [Description("metric (default) or us, for screens and reports; files stay metric.")]
    public string UnitsText { get; init; } = "metric";

    [CommandOption("--quiet")]
    [Description("Prints nothing but errors.")]
    public bool Quiet { get; init; }

    public Quality Quality => OneOf("--quality", QualityText, Quality.Draft, Quality.Standard, Quality.Fine);

    public Units Units => OneOf("--units", UnitsText, Units.Metric, Units.Us);

    public int ThreadCount => NumberOption.Whole(Threads, "--threads", 1, 1024) ?? Environment.ProcessorCount;

    private static T OneOf<T>(string option, string text, params T[] values)
        where T : struct, Enum
    {
        foreach (var value in values)
            if (value.ToString().Equals(text, StringComparison.OrdinalIgnoreCase)) return value;
        throw new InputError(
            new InputPlace(option), InputError.Quote(text),
            string.Join(", ", values.Select(value => value.ToString().ToLowerInvariant())));
    }
}

/// <summary>What a command takes that computes one scenario.</summary>
public class OneScenarioSettings : ComputeSettings
{
    [CommandArgument(0, "<SCENARIO>")]
    [Description("The scenario file.")]
    public string Scenario { get; init; } = "";

    /// <summary>The results folder: as asked, or named after the scenario's folder or file.</summary>
    public string OutFolder(string scenarioPath)
    {
        if (Out is not null) return Out;
        return Path.Combine("results", OptionNames.StemOf(scenarioPath));
    }
}
