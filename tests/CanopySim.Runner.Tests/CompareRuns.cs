using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>
/// The first season up to ten days of August beside the same block on a hanging curtain, both called the same; and the
/// second of them as
/// <c>season</c> has it.
/// </summary>
public sealed class CompareRuns : IDisposable
{
    public const string First = "First season (first-season)";

    public const string Second = "First season (curtain)";

    private readonly TemporaryFolder _folder = new();

    public CompareRuns()
    {
        var curtain = _folder.Write("curtain.yaml",
            $"based_on: {RunnerProcess.FirstSeason}\n\ntrellis:\n  form: hanging-curtain\n");
        string[] options = ["--quality", "draft", "--set", "season.harvest=date", "--set",
            "season.harvest_date=2025-08-10"];
        var compared = RunnerProcess.Run(_folder.Path,
            ["compare", RunnerProcess.FirstSeason, curtain, "--out", "compared", "--threads", "2", .. options]);
        Assert.True(compared.ExitCode == RunnerApp.Ok, compared.ToString());
        Assert.Empty(compared.Complaints);
        Output = compared.Output;
        var season = RunnerProcess.Run(_folder.Path,
            ["season", curtain, "--out", "alone", "--threads", "1", .. options]);
        Assert.True(season.ExitCode == RunnerApp.Ok, season.ToString());
    }

    /// <summary>What the comparison printed.</summary>
    public string Output { get; }

    public string Compared => _folder.File("compared");

    public string Report => Path.Combine(Compared, "report.html");

    /// <summary>Folder of the second option, and of the same season alone.</summary>
    public (string Compared, string Alone) Curtain =>
        (Path.Combine(Compared, "first-season-curtain"), _folder.File("alone"));

    public void Dispose() => _folder.Dispose();
}
