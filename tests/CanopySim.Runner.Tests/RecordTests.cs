using CanopySim.Files.Recording;
using Xunit;

namespace CanopySim.Runner.Tests;

public sealed class RecordTests
{
    [Fact]
    public void Record_writes_the_season_and_changes_nothing_else()
    {
        using var folder = new TemporaryFolder();
        string[] season = ["season", RunnerProcess.FirstSeason, "--quality", "draft", "--until", "2025-05-20", "--quiet"];
        Assert.Equal(RunnerApp.Ok, RunnerProcess.Run(folder.Path, [.. season, "--out", "plain"]).ExitCode);
        var run = RunnerProcess.Run(folder.Path, [.. season, "--out", "recorded", "--record"]);
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        foreach (var table in (string[])["days.csv", "leaves.csv", "leaf_ages.csv"])
            Assert.Equal(File.ReadAllText(folder.File($"plain/{table}")), File.ReadAllText(folder.File($"recorded/{table}")));
        Assert.False(File.Exists(folder.File("plain/season.bin")));

        using var recording = SeasonRecording.Open(folder.File("recorded/season.bin"));
        Assert.Equal(File.ReadAllLines(folder.File("plain/days.csv")).Length - 1, recording.DayCount);
        Assert.Equal(new DateOnly(2025, 5, 20), recording.Row(recording.DayCount - 1).Date);

        // A folder that holds a recording is ours, and is replaced.
        Assert.Equal(RunnerApp.Ok, RunnerProcess.Run(folder.Path, [.. season, "--out", "recorded"]).ExitCode);
        Assert.False(File.Exists(folder.File("recorded/season.bin")));
    }
}
