using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>The light on a July morning in the first season.</summary>
public sealed class LightRun : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public LightRun()
    {
        _folder.Write(
            "sensors.csv",
            "sensor,x_m,y_m,z_m,facing\nabove,0,0.4,4,up\nball,0,0.4,4,\nfrom above,0,0.4,4,down\nzone,0,0.4,1.1,up\nalley,1.2,0.4,0,up\ncopy,2.4,1.9,1.1,up\n");
        var run = RunnerProcess.Run(
            _folder.Path,
            "light",
            RunnerProcess.FirstSeason,
            "--at",
            "2025-07-20T10:00",
            "--quality",
            "draft",
            "--out",
            "light",
            "--sensors",
            "sensors.csv");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Empty(run.Error);
    }

    public string File(string name) => _folder.File(Path.Combine("light", name));

    public void Dispose() => _folder.Dispose();
}
