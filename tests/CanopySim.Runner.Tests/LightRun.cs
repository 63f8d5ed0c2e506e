using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>The light on a July morning in the first season.</summary>
public sealed class LightRun : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public LightRun()
    {
        var run = RunnerProcess.Run(
            _folder.Path, "light", RunnerProcess.FirstSeason, "--at", "2025-07-20T10:00", "--quality", "draft", "--out", "light");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Empty(run.Error);
    }

    public string File(string name) => _folder.File(Path.Combine("light", name));

    public void Dispose() => _folder.Dispose();
}
