using System.Text.Json;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>The real record of a cool site, in all its years, up to the end of June.</summary>
public sealed class OpenWeatherTests
{
    private static readonly int[] Years = [2012, 2013, 2014, 2015];

    /// <summary>
    /// An early cultivar blooms there in June, and much later in the cool spring of 2012 than in the warm one of 2015. What a
    /// season has not reached is null.
    /// </summary>
    [Fact]
    public void An_early_cultivar_blooms_in_june_and_later_in_a_cool_spring()
    {
        using var folder = new TemporaryFolder();
        var bloom = new Dictionary<int, DateOnly>();
        foreach (var year in Years)
        {
            var run = RunnerProcess.Run(
                folder.Path, "season", Path.Combine(RunnerProcess.Repository, "scenarios", "open-weather", "scenario.yaml"), "--quality", "draft",
                "--set", $"season.year={year}", "--until", $"{year}-06-30", "--out", $"{year}", "--quiet");
            Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
            using var summary = JsonDocument.Parse(File.ReadAllText(folder.File($"{year}/summary.json")));
            var dates = summary.RootElement.GetProperty("dates");
            bloom[year] = DateOnly.Parse(dates.GetProperty("bloom").GetString()!);
            Assert.InRange(bloom[year], new DateOnly(year, 6, 1), new DateOnly(year, 6, 30));
            Assert.Equal(JsonValueKind.Null, dates.GetProperty("veraison").ValueKind);
            Assert.Equal(JsonValueKind.Null, summary.RootElement.GetProperty("canopy").ValueKind);
            Assert.Equal(JsonValueKind.Null, summary.RootElement.GetProperty("harvest").ValueKind);
            Assert.Contains("global_radiation", summary.RootElement.GetProperty("estimated_inputs").EnumerateArray().Select(item => item.GetString()));
        }

        Assert.True(bloom[2012].DayOfYear - bloom[2015].DayOfYear >= 10, $"bloom {bloom[2012]:M-d} in 2012, {bloom[2015]:M-d} in 2015");
    }
}
