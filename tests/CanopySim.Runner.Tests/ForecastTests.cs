using System.Text.Json;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>A forecast through the whole program, on a short piece of the shipped block with notes.</summary>
public sealed class ForecastTests : IDisposable
{
    private static readonly string Block = Path.Combine(RunnerProcess.Repository, "scenarios", "notebook", "scenario.yaml");
    private static readonly string Notes = Path.Combine(RunnerProcess.Repository, "scenarios", "notebook", "notes.csv");

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_page_of_the_terminal_and_the_file_say_the_same()
    {
        var run = Small("--members", "20", "--options", "2");
        Assert.True(run.ExitCode == 0, run.ToString());
        using var json = JsonDocument.Parse(File.ReadAllText(_folder.File("out/forecast.json")));
        var forecast = json.RootElement;
        Assert.Equal("2024-05-20", forecast.GetProperty("as_of").GetString());
        Assert.Equal(20, forecast.GetProperty("members").GetInt32());
        var ripe = forecast.GetProperty("target_sugar");
        Assert.Matches($@"^Ripe \(22 Brix\) on {Day(ripe, "p50")}", run.Output.Replace('\n', ' '));
        foreach (var stage in new[] { "bloom", "veraison", "target_sugar" })
        {
            var range = forecast.GetProperty(stage);
            Assert.True(string.CompareOrdinal(range.GetProperty("p10").GetString(), range.GetProperty("p90").GetString()) <= 0);
            Assert.InRange(range.GetProperty("chance").GetDouble(), 0.5, 1);
        }

        foreach (var name in new[] { "leaf_area_m2_per_vine", "sugar_brix", "shoot_length_cm" })
        {
            var fan = forecast.GetProperty(name);
            Assert.True(fan.GetArrayLength() > 20, name);
            Assert.All(fan.EnumerateArray(), day => Assert.True(
                day.GetProperty("p10").GetDouble() <= day.GetProperty("p50").GetDouble()
                && day.GetProperty("p50").GetDouble() <= day.GetProperty("p90").GetDouble()));
        }

        var page = File.ReadAllText(_folder.File("out/forecast.html"));
        Assert.Contains($"Ripe (22 Brix) on {Day(ripe, "p50")}", page);
        Assert.Contains("Temperature index after Gubler", page);
        Assert.Contains("\"contents\": \"forecast\"", File.ReadAllText(_folder.File("out/summary.json")));
        foreach (var part in new[] { "Growing tip", "Sprays", "Powdery mildew", "What the notes said", "product label" })
            Assert.Contains(part, run.Output);
    }

    [Theory]
    [InlineData("forecast: no --notes; expected the file of field notes", "")]
    [InlineData("no file \"nowhere.csv\"; expected", "--notes nowhere.csv")]
    [InlineData("--as-of: \"May\" is no day; expected a day such as 2025-07-20", "--as-of May --notes NOTES")]
    [InlineData("--as-of: 2023-05-20; expected a day of the season that the weather covers", "--as-of 2023-05-20 --notes NOTES")]
    [InlineData("--members: \"5\"; expected a whole number from 20 to 1000", "--members 5 --notes NOTES")]
    public void What_is_wrong_is_said(string said, string options)
    {
        string[] given = [.. options.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => word == "NOTES" ? Notes : word)];
        var run = RunnerProcess.Run(_folder.Path, ["forecast", Block, "--out", "out", .. given]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, Assert.Single(run.ErrorLines));
        Assert.DoesNotContain("out", _folder.Entries());
    }

    private RunnerOutcome Small(params string[] more) => RunnerProcess.Run(
        _folder.Path,
        [
            "forecast", Block, "--notes", Notes, "--out", "out", "--quality", "draft", "--set", "rows.vine_spacing=0.5 m", "--set",
            "canopy_work.shoots_per_meter=8 1/m", .. more,
        ]);

    private static string Day(JsonElement stage, string name) => DateOnly.Parse(stage.GetProperty(name).GetString()!)
        .ToString("d MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture);
}
