using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>The first season up to the end of July, once with one thread and once with two, and its spring with another seed.</summary>
public sealed class SeasonRuns : IDisposable
{
    public const string LeavesOn = "2025-06-15";

    public const string LastDay = "2025-07-31";

    public const string LastDayOfOtherSeed = "2025-05-31";

    private readonly TemporaryFolder _folder = new();

    public SeasonRuns()
    {
        Run("one", "--threads", "1", "--until", LastDay, "--leaves-on", LeavesOn);
        Run("two", "--threads", "2", "--until", LastDay, "--leaves-on", LeavesOn);
        Run("seed", "--threads", "2", "--until", LastDayOfOtherSeed, "--seed", "2");
    }

    public string OneThread => _folder.File("one");

    public string TwoThreads => _folder.File("two");

    public string OtherSeed => _folder.File("seed");

    public void Dispose() => _folder.Dispose();

    private void Run(string outFolder, params string[] options)
    {
        var run = RunnerProcess.Run(_folder.Path, ["season", RunnerProcess.FirstSeason, "--quality", "draft", "--out", outFolder, .. options]);
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Empty(run.Complaints);
    }
}
