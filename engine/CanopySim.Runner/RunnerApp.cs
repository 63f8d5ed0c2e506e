using CanopySim.Runner.Commands;
using Spectre.Console.Cli;

namespace CanopySim.Runner;

/// <summary>The program canopysim: which commands it has, and what its exit codes mean.</summary>
public static class RunnerApp
{
    public const int Ok = ExitCode.Ok;
    public const int BadInput = ExitCode.BadInput;

    /// <summary>The work is done, but some of its items could not be.</summary>
    public const int SomeFailed = ExitCode.SomeFailed;

    /// <summary>Nothing is wrong with the input: the same command may succeed later.</summary>
    public const int TryAgain = ExitCode.TryAgain;

    public const int Stopped = ExitCode.Stopped;

    public static int Run(string[] args) => new ProgramShell("canopysim").Run(new CommandApp(), Configure, Joined(args));

    private static void Configure(IConfigurator app)
    {
        app.AddCommand<NewCommand>("new")
            .WithDescription("Writes a commented scenario to start from.")
            .WithExample("new", "my-block/scenario.yaml");
        app.AddCommand<SeasonCommand>("season")
            .WithDescription("Runs one season and writes results, charts and a report.")
            .WithExample("season", "scenarios/first-season/scenario.yaml", "--quality", "draft");
        app.AddCommand<CompareCommand>("compare")
            .WithDescription("Runs the seasons of several scenarios and puts them side by side: a table, compare.csv "
                + "and a report.")
            .WithExample(
                "compare", "scenarios/warm-valley/scenario.yaml", "scenarios/twin-curtain/scenario.yaml",
                "scenarios/shoot-number/30.yaml", "--quality", "draft");
        app.AddCommand<ForecastCommand>("forecast")
            .WithDescription("Fits the vine to field notes, then looks ahead with a range.")
            .WithExample("forecast", "scenarios/notebook/scenario.yaml", "--notes", "scenarios/notebook/notes.csv");
        app.AddBranch("batch", batch =>
        {
            batch.SetDescription("Many seasons by a plan: grown here or on a cluster, merged into one table, asked by SQL.");
            batch.AddCommand<BatchRunCommand>("run")
                .WithDescription("Grows the seasons of a plan, one a core; goes on where an earlier run stopped.")
                .WithExample("batch", "run", "scenarios/many-seasons/plan.yaml");
            batch.AddCommand<BatchStatusCommand>("status")
                .WithDescription("What of a batch is done, what failed and why.")
                .WithExample("batch", "status", "scenarios/many-seasons/plan.yaml");
            batch.AddCommand<BatchMergeCommand>("merge")
                .WithDescription("Puts all shards together to one dataset of Parquet files.")
                .WithExample("batch", "merge", "scenarios/many-seasons/plan.yaml");
            batch.AddCommand<BatchSubmitCommand>("submit")
                .WithDescription("Submits a plan to Slurm: an array of tasks and the merge after it.")
                .WithExample(
                    "batch", "submit", "scenarios/many-seasons/plan.yaml", "--slurm", "\"--time=1:00:00 --cpus-per-task=4\"",
                    "--dry-run");
            batch.AddCommand<BatchAskCommand>("ask")
                .WithDescription("Asks the merged dataset by SQL: tables seasons and courses.")
                .WithExample(
                    "batch", "ask", "scenarios/many-seasons/plan.yaml",
                    "\"SELECT year, avg(\\\"harvest.sugar_brix\\\") FROM seasons GROUP BY year\"");
        });
        app.AddCommand<LightCommand>("light")
            .WithDescription("One moment of light in full detail, with the scene.")
            .WithExample("light", "scenarios/first-season/scenario.yaml", "--at", "2025-07-20T10:00")
            .WithExample(
                "light", "scenarios/first-season/scenario.yaml", "--at", "2025-07-20T10:00", "--sensors",
                "sensors.csv");
        app.AddCommand<SunCommand>("sun")
            .WithDescription("Where the sun stands, as CSV: zenith and azimuth in degrees, without refraction.")
            .WithExample("sun", "--at", "2025-06-21T12:00:00Z", "--latitude", "38.4", "--longitude", "-122.3");
        app.AddCommand<CheckCommand>("check")
            .WithDescription("Reads scenarios or plans and their weather; prints what was understood and how sure each value "
                + "is.")
            .WithExample("check", "scenarios/first-season/scenario.yaml");
    }

    // Options of another program begin with dashes too; as a word of its own such a value would be taken for an option of ours.
    private static IReadOnlyList<string> Joined(string[] args)
    {
        var joined = new List<string>();
        for (var i = 0; i < args.Length; i++)
            joined.Add(args[i] == BatchSubmitCommand.SlurmOption && i + 1 < args.Length ? $"{args[i]}={args[++i]}" : args[i]);
        return joined;
    }
}
