using System.Text.RegularExpressions;
using Xunit;

namespace CanopySim.Runner.Tests;

public class CheckNewHelpTests
{
    [Theory]
    [InlineData("site.latitude", "38.4 deg", "given")]
    [InlineData("rows.spacing", "2.4 m", "given")]
    [InlineData("site.slope", "0 deg", "assumed")]
    [InlineData("site.co2", "420 umol mol-1", "from memory")]
    [InlineData("site.wind_height", "10 m", "from memory")]
    [InlineData("trellis.foliage_width", "left out", "common practice, no source")]
    public void Check_says_on_one_line_what_was_understood_and_how_sure_it_is(string key, string value, string mark)
    {
        var run = RunnerProcess.Run(RunnerProcess.Repository, "check", "scenarios/first-season/scenario.yaml");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Empty(run.Error);
        Assert.Contains("365 days", run.Output, StringComparison.Ordinal);
        Assert.Contains("gaps filled: 0", run.Output, StringComparison.Ordinal);
        Assert.Matches($"(?m)^{Regex.Escape(key)} +{Regex.Escape(value)} +{mark}( |$)", run.Output);
    }

    [Fact]
    public void Check_shows_what_an_option_of_the_command_line_changed()
    {
        var run = RunnerProcess.Run(RunnerProcess.Repository, "check", "scenarios/first-season/scenario.yaml", "--set", "rows.spacing=8 ft", "--seed", "7");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Matches("(?m)^rows\\.spacing +2\\.4384 m ", run.Output);
        Assert.Matches("(?m)^seed +7 ", run.Output);
    }

    [Fact]
    public void New_writes_a_scenario_that_reads_back_once_it_has_weather()
    {
        using var folder = new TemporaryFolder();
        var written = RunnerProcess.Run(folder.Path, "new", "block/scenario.yaml");
        Assert.True(written.ExitCode == RunnerApp.Ok, written.ToString());

        var missing = RunnerProcess.Run(folder.Path, "check", "block/scenario.yaml");
        Assert.Equal(RunnerApp.BadInput, missing.ExitCode);
        Assert.Contains("weather.file: no file", Assert.Single(missing.ErrorLines), StringComparison.Ordinal);

        // The starter asks for 2014; the days of the first season serve it under that year.
        var weather = File.ReadAllText(Path.Combine(Path.GetDirectoryName(RunnerProcess.FirstSeason)!, "weather.csv"));
        folder.Write("block/weather.csv", weather.Replace("2025-", "2014-", StringComparison.Ordinal));
        var read = RunnerProcess.Run(folder.Path, "check", "block/scenario.yaml");
        Assert.True(read.ExitCode == RunnerApp.Ok, read.ToString());
    }

    [Fact]
    public void New_writes_an_empty_sheet_of_notes_that_reads_back()
    {
        using var folder = new TemporaryFolder();
        var written = RunnerProcess.Run(folder.Path, "new", "--notes", "notes.csv");
        Assert.True(written.ExitCode == RunnerApp.Ok, written.ToString());
        Assert.Contains("How to count nodes", File.ReadAllText(folder.File("notes.csv")), StringComparison.Ordinal);
        Assert.Empty(CanopySim.Files.Notes.NotesFile.Read(folder.File("notes.csv")).Notes);
    }

    [Fact]
    public void New_overwrites_nothing()
    {
        using var folder = new TemporaryFolder();
        folder.Write("scenario.yaml", "mine");
        var run = RunnerProcess.Run(folder.Path, "new", "scenario.yaml");
        Assert.True(run.ExitCode == RunnerApp.BadInput, run.ToString());
        Assert.StartsWith("canopysim: scenario.yaml: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(folder.File("scenario.yaml")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("new")]
    [InlineData("season")]
    [InlineData("compare")]
    [InlineData("light")]
    [InlineData("sun")]
    [InlineData("check")]
    public void Help_shows_an_example(string command)
    {
        var run = RunnerProcess.Run(Path.GetTempPath(), [.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Empty(run.Error);
        Assert.Matches($"EXAMPLES:\\s+canopysim {command}", run.Output);
    }
}
