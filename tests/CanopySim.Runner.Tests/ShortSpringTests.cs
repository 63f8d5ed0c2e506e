using System.Globalization;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>The shipped season whose green shoots freeze on 7 May: what the program says of the weeks around it.</summary>
public sealed class ShortSpringTests
{
    private const string Frost = "2024-05-07";

    [Fact]
    public void A_killing_night_after_budbreak_takes_the_shoots_and_others_follow()
    {
        var scenario = Path.Combine(RunnerProcess.Repository, "scenarios", "short-spring", "scenario.yaml");
        using var folder = new TemporaryFolder();
        var run = RunnerProcess.Run(folder.Path, "season", scenario, "--quality", "draft", "--until", "2024-06-15", "--out", "x", "--quiet");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        var rows = File.ReadAllLines(folder.File("x/days.csv")).Select(line => line.Split(',')).ToList();
        var (stage, nodes, length) = (Array.IndexOf(rows[0], "stage"), Array.IndexOf(rows[0], "nodes_per_shoot"), Array.IndexOf(rows[0], "shoot_length_cm"));
        var frost = rows.FindIndex(row => row[0] == Frost);
        var budbreak = rows.FindIndex(row => row[stage] == "budbreak");
        Assert.InRange(frost - budbreak, 10, 28);
        Assert.True(Number(rows[frost - 1], nodes) > 1 && Number(rows[frost - 1], length) > 5, string.Join(',', rows[frost - 1]));
        Assert.Equal(0, Number(rows[frost], length));
        Assert.True(Number(rows[^1], nodes) > 1, string.Join(',', rows[^1]));
    }

    private static double Number(string[] row, int column) => double.Parse(row[column], CultureInfo.InvariantCulture);
}
