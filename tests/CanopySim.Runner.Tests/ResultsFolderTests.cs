using System.Diagnostics;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>A results folder appears whole or not at all, and nobody else's file is ever lost to it.</summary>
public class ResultsFolderTests
{
    private static readonly string[] Results =
    [
        "canopy_sheet.csv", "charts", "days.csv", "fruit_heat.csv", "fruit_light.csv", "fruit_light_hours.csv", "leaf_ages.csv", "leaves.csv", "report.html",
        "summary.json", "work.csv",
    ];

    [Fact]
    public void A_folder_that_is_not_ours_is_refused_and_left_as_it_was()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder.File("mine"));
        folder.Write("mine/thesis.txt", "three years of work");

        var run = Winter(folder, "mine", "2025-03-02");

        Assert.True(run.ExitCode == RunnerApp.BadInput, run.ToString());
        Assert.Contains("mine", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        Assert.Equal("three years of work", File.ReadAllText(folder.File("mine/thesis.txt")));
        Assert.Equal(["mine"], folder.Entries());
        Assert.Single(Directory.GetFileSystemEntries(folder.File("mine")));
    }

    [Fact]
    public void A_folder_of_ours_is_replaced_whole_but_not_once_somebody_put_a_file_into_it()
    {
        using var folder = new TemporaryFolder();
        var first = Winter(folder, "ours", "2025-03-02");
        Assert.True(first.ExitCode == RunnerApp.Ok, first.ToString());
        AssertHolds(folder, "2025-03-02");
        // What an earlier run recorded does not belong to the new one.
        folder.Write("ours/season.bin", "of an earlier run");

        var second = Winter(folder, "ours", "2025-03-03");
        Assert.True(second.ExitCode == RunnerApp.Ok, second.ToString());
        AssertHolds(folder, "2025-03-03");

        folder.Write("ours/remarks.txt", "look at row 7");
        var third = Winter(folder, "ours", "2025-03-04");
        Assert.True(third.ExitCode == RunnerApp.BadInput, third.ToString());
        Assert.Contains("\"remarks.txt\"", Assert.Single(third.ErrorLines), StringComparison.Ordinal);
        Assert.Equal("look at row 7", File.ReadAllText(folder.File("ours/remarks.txt")));
        File.Delete(folder.File("ours/remarks.txt"));
        AssertHolds(folder, "2025-03-03");
    }

    [Theory]
    [InlineData("season", "first-season")]
    [InlineData("compare", "first-season", "warm-valley")]
    public void A_run_that_is_stopped_ends_with_130_and_leaves_nothing(string command, params string[] scenarios)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "sends a signal");
        using var folder = new TemporaryFolder();
        Process? signal = null;
        using var watcher = new FileSystemWatcher(folder.Path) { EnableRaisingEvents = true };
        // The folder that is written into appears when the season begins: that is the time to stop it.
        watcher.Created += (_, created) =>
        {
            if (!created.Name!.EndsWith(".partial", StringComparison.Ordinal)) return;
            signal ??= Process.Start("sh", ["-c", $"kill -TERM {File.ReadAllText(folder.File("pid"))}"]);
        };
        var run = RunnerProcess.Run(folder.Path, process => File.WriteAllText(folder.File("pid"), $"{process.Id}"),
            [command, .. scenarios.Select(ScenarioOf), "--out", "stopped"]);
        signal?.Dispose();

        Assert.True(run.ExitCode == RunnerApp.Stopped, run.ToString());
        Assert.Contains("stopped", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        Assert.Empty(run.Output);
        Assert.Equal(["pid"], folder.Entries());
    }

    private static string ScenarioOf(string name) => Path.Combine(RunnerProcess.Repository, "scenarios", name, "scenario.yaml");

    [Fact]
    public void Without_out_the_folder_is_named_after_the_block_and_quiet_prints_nothing()
    {
        using var folder = new TemporaryFolder();
        var run = RunnerProcess.Run(folder.Path, "season", RunnerProcess.FirstSeason, "--quality", "draft", "--until", "2025-03-02", "--quiet");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Empty(run.Output);
        Assert.Empty(run.Complaints);
        Assert.True(File.Exists(folder.File("results/first-season/summary.json")));
    }

    // Before budbreak a season takes no time, and writes every file all the same.
    private static RunnerOutcome Winter(TemporaryFolder folder, string outFolder, string until) =>
        RunnerProcess.Run(folder.Path, "season", RunnerProcess.FirstSeason, "--quality", "draft", "--out", outFolder, "--until", until);

    private static void AssertHolds(TemporaryFolder folder, string lastDay)
    {
        Assert.Equal(["ours"], folder.Entries());
        var names = Directory.GetFileSystemEntries(folder.File("ours")).Select(Path.GetFileName).Order(StringComparer.Ordinal);
        Assert.Equal(Results, names);
        Assert.Equal(lastDay, CsvRows.Read(folder.File("ours/days.csv")).Column("date").Last());
    }
}
