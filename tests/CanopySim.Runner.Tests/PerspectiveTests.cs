using CanopySim.Drawing.Pictures;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>Canopies in perspective in reports, and what is said where nothing can be drawn.</summary>
[Collection(nameof(Browser.ComparedOnce))]
public sealed class PerspectiveTests(CompareRuns runs)
{
    private const int MostBytes = 300_000;

    [Fact]
    public void Each_option_is_drawn_once_and_stands_in_both_reports()
    {
        Assert.SkipUnless(PictureMachine.CanDraw, "needs the Debian packages libegl1 libegl-mesa0 libgl1-mesa-dri");
        var page = File.ReadAllText(runs.Report);
        var pictures = new List<byte[]>();
        foreach (var option in (string[])["first-season-first-season", "first-season-curtain"])
        {
            var folder = Path.Combine(runs.Compared, option);
            var bytes = File.ReadAllBytes(Path.Combine(folder, "charts", $"{PortraitPictures.Stem}.png"));
            Assert.InRange(bytes.Length, 20_000, MostBytes);
            var embedded = Convert.ToBase64String(bytes);
            Assert.Contains(embedded, page);
            Assert.Contains(embedded, File.ReadAllText(Path.Combine(folder, "report.html")));
            pictures.Add(bytes);
        }

        Assert.NotEqual(pictures[0], pictures[1]);
        Assert.Contains("seen from the same place in the alley, at the same hour", page);
        Assert.Contains("each leaf in the color of its age; half of them are", page);
    }

    [Fact]
    public void A_machine_that_cannot_draw_gets_its_report_and_is_told_what_to_install()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "a library is put before the system's own");
        using var folder = new TemporaryFolder();
        folder.Write("libEGL.so.1", "no library");
        var run = RunnerProcess.Run(
            folder.Path, new Dictionary<string, string> { ["LD_LIBRARY_PATH"] = folder.Path }, _ => { },
            "season", RunnerProcess.FirstSeason, "--quality", "draft", "--until", "2025-04-30", "--out", "out", "--quiet");
        Assert.Equal(RunnerApp.Ok, run.ExitCode);
        var line = Assert.Single(run.ErrorLines);
        Assert.Contains(PictureMachine.Missing, line);
        Assert.Contains("apt-get install libegl1 libegl-mesa0 libgl1-mesa-dri", line);
        var report = File.ReadAllText(folder.File("out/report.html"));
        Assert.Contains("There is no picture of the canopy in perspective here.", report);
        Assert.Contains("apt-get install libegl1 libegl-mesa0 libgl1-mesa-dri", report);
        Assert.False(File.Exists(folder.File($"out/charts/{PortraitPictures.Stem}.png")));
    }
}
