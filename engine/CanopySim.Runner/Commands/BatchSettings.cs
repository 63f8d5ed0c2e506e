using System.ComponentModel;
using System.Globalization;
using CanopySim.Files;
using CanopySim.Files.Batch;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary>What every command on a batch takes.</summary>
public class BatchSettings : CommandSettings
{
    [CommandArgument(0, "<PLAN>")]
    [Description("The plan file.")]
    public string Plan { get; init; } = "";

    [CommandOption("--out <DIR>")]
    [Description("Folder of the batch; results/<name of the plan> by default.")]
    public string? Out { get; init; }

    [CommandOption("--quiet")]
    [Description("Prints nothing but errors.")]
    public bool Quiet { get; init; }
}

/// <summary>A plan that was read and checked, with its list and its folder.</summary>
public sealed record OpenBatch(BatchPlan Plan, PlanItems Items, SeasonsTable Seasons, PlanHashes Hashes, BatchFolder Folder)
{
    /// <exception cref="InputError">Plan, scenario or weather is wrong, or the folder is somebody else's.</exception>
    /// <exception cref="SeasonInputException">Weather does not cover a season.</exception>
    public static OpenBatch Read(string path, string? folder)
    {
        var plan = PlanFile.Read(path);
        var items = new PlanItems(plan);
        new BatchWeather(plan, kept: 1).CheckAll(items);
        var seasons = new SeasonsTable(plan);
        var hashes = new PlanHashes(plan, items, seasons);
        return new OpenBatch(
            plan, items, seasons, hashes,
            new BatchFolder(folder ?? Path.Combine("results", plan.Name), plan, items, hashes, seasons));
    }

    public static OpenBatch Read(BatchSettings settings) => Read(settings.Plan, settings.Out);

    /// <summary>Cores that a scheduler gave to this task, asked for or not, else all.</summary>
    public static int CoresOfTask => Given("SLURM_CPUS_PER_TASK") ?? Given("SLURM_CPUS_ON_NODE") ?? Environment.ProcessorCount;

    private static int? Given(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out var cores) && cores > 0
            ? cores
            : null;
}
