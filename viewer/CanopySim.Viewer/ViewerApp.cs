using CanopySim.Drawing;
using CanopySim.Viewer.Commands;
using CanopySim.Viewer.Window;
using Spectre.Console.Cli;

namespace CanopySim.Viewer;

/// <summary>The program canopysim-view.</summary>
public static class ViewerApp
{
    public static int Run(string[] args) =>
        new ProgramShell("canopysim-view", error => error is WindowException or DrawingException)
            .Run(new CommandApp<ViewCommand>(), Configure, args);

    private static void Configure(IConfigurator app)
    {
        app.AddExample("results/first-season");
        app.AddExample(
            "results/first-season", "--picture", "june.png", "--date", "2025-06-20", "--time", "10:30",
            "--color", "light-now", "--from", "across");
        app.AddExample(
            "scenarios/first-season/scenario.yaml", "--film", "season.gif", "--of", "season", "--color", "age",
            "--size", "640x400");
    }
}
