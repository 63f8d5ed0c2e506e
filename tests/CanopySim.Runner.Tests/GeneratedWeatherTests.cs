using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>Weather made from a seed, as the command line asks for it.</summary>
public sealed class GeneratedWeatherTests
{
    [Theory]
    [InlineData("first-season", "2025-01-01 to 2025-12-31, 365 days")]
    [InlineData("open-weather", "2012-01-01 to 2015-12-31, 1461 days")]
    public void Check_says_that_weather_from_a_seed_is_generated(string name, string days)
    {
        var run = RunnerProcess.Run(RunnerProcess.Repository, "check", $"scenarios/{name}/scenario.yaml", "--set", "weather.seed=3");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Contains($"weather {days}", run.Output, StringComparison.Ordinal);
        Assert.Contains("estimated: generated_weather, hourly_temperature", run.Output, StringComparison.Ordinal);
        Assert.Matches("(?m)^weather\\.seed +3 +given", run.Output);

        var recorded = RunnerProcess.Run(RunnerProcess.Repository, "check", $"scenarios/{name}/scenario.yaml");
        Assert.DoesNotContain("generated_weather", recorded.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_of_less_than_a_year_makes_none()
    {
        using var folder = new TemporaryFolder();
        var first = Path.GetDirectoryName(RunnerProcess.FirstSeason)!;
        folder.Write("scenario.yaml", File.ReadAllText(RunnerProcess.FirstSeason));
        folder.Write("weather.csv", string.Join('\n', File.ReadLines(Path.Combine(first, "weather.csv")).Take(300)) + "\n");
        var run = RunnerProcess.Run(folder.Path, "check", "scenario.yaml", "--set", "weather.seed=3");
        Assert.Equal(RunnerApp.BadInput, run.ExitCode);
        Assert.StartsWith("canopysim: weather.seed: the weather covers 299 days; expected", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }
}
