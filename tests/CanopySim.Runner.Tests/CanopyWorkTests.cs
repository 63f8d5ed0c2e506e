using System.Text.Json;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>What the program says of work in the canopy: on the screen, in the summary and in the tables.</summary>
public sealed class CanopyWorkTests
{
    [Fact]
    public void Work_is_told_with_what_was_not_as_planned_and_what_to_heed()
    {
        using var folder = new TemporaryFolder();
        var first = Path.GetDirectoryName(RunnerProcess.FirstSeason)!;
        folder.Write("scenario.yaml", File.ReadAllText(RunnerProcess.FirstSeason).Replace(
            "canopy_work:\n",
            "canopy_work:\n  topping: [{when_shoots_reach: 5 cm, height: 3 m}]\n  sprays: [{when_shoots_reach: 5 cm, label: 'first, cover'}]\n",
            StringComparison.Ordinal));
        folder.Write("weather.csv", File.ReadAllText(Path.Combine(first, "weather.csv")));
        var run = RunnerProcess.Run(folder.Path, "season", "scenario.yaml", "--quality", "draft", "--until",
            "2025-05-04", "--out", "results");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());

        using var summary = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder.Path, "results", "summary.json")));
        var warning = summary.RootElement.GetProperty("warnings").EnumerateArray().Single().GetString()!;
        Assert.Matches("^canopy_work\\.topping\\.0 on 2025-0[45]-[0-9]{2}: no shoot reached beyond 3 m over the ground, so nothing was cut\\.$", warning);
        Assert.Contains($"Not as planned: {warning}", run.Output, StringComparison.Ordinal);
        Assert.Contains("follow the product label", run.Output, StringComparison.Ordinal);

        var work = File.ReadAllLines(Path.Combine(folder.Path, "results", "work.csv"));
        Assert.Equal(2, work.Length);
        Assert.Matches("^2025-0[45]-[0-9]{2},sprays,\"sprayed: first, cover\",0,0,[0-9]+,0\\.[0-9]+,0$", work[1]);
        var days = CsvRows.Read(Path.Combine(folder.Path, "results", "days.csv"));
        Assert.True(days.Numbers("leaf_area_unsprayed_m2_per_vine").Last() > 0.05);
        Assert.Contains("<h2>Work in the canopy</h2>", File.ReadAllText(Path.Combine(folder.Path, "results",
            "report.html")), StringComparison.Ordinal);
    }
}
