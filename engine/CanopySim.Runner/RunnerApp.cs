using CanopySim.Runner.Commands;
using Spectre.Console.Cli;

namespace CanopySim.Runner;

/// <summary>The program canopysim: which commands it has, and what its exit codes mean.</summary>
public static class RunnerApp
{
    public const int Ok = ExitCode.Ok;
    public const int BadInput = ExitCode.BadInput;
    public const int Stopped = ExitCode.Stopped;

    public static int Run(string[] args) => new ProgramShell("canopysim").Run(new CommandApp(), Configure, args);

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
            .WithDescription("Reads scenarios and their weather; prints what was understood and how sure each value "
                + "is.")
            .WithExample("check", "scenarios/first-season/scenario.yaml");
    }
}
