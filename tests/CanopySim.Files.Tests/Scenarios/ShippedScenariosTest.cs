using CanopySim.Files.Batch;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

/// <summary>Every scenario that is shipped reads, says where it is from, and has weather for its season, from record and from seed.</summary>
public sealed class ShippedScenariosTest
{
    public static string Folder { get; } = FindFolder();

    /// <summary>Every scenario by folder and file; each folder has a scenario.yaml. Plans have a test of their own.</summary>
    public static TheoryData<string> Names =>
    [
        .. Directory.EnumerateDirectories(Folder)
            .SelectMany(folder =>
                Directory.EnumerateFiles(folder, "*.yaml").Where(path => !PlanFile.IsPlan(path)).Append(Path.Combine(folder, "scenario.yaml")))
            .Select(path => Path.GetRelativePath(Folder, path).Replace('\\', '/'))
            .Distinct().Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public void Reads_and_has_weather_for_its_whole_season(string name)
    {
        var path = Path.Combine(Folder, name);
        Assert.True(File.Exists(Path.Combine(Path.GetDirectoryName(path)!, "README.md")), "no README.md");
        var document = ScenarioFile.Read(path);
        var scenario = document.Scenario;
        var weather = WeatherBuilder.Complete(
            SeasonWeather.Read(document), scenario.Weather, scenario.Site, SiteTime.Of(scenario.Site).StandardOffsetHours(scenario.Season.Year!.Value));
        var calendar = SeasonCalendar.Of(scenario, weather);
        Assert.True(weather.Days[0].Date <= calendar.HeatFrom, $"weather from {weather.Days[0].Date}");
        Assert.True(weather.Days[^1].Date >= calendar.LastDay, $"weather to {weather.Days[^1].Date}, season to {calendar.LastDay}");

        var generated = SeasonWeather.Read(ScenarioFile.Read(document.Path, ["weather.seed=3"]));
        Assert.True(generated.IsGenerated);
        Assert.Equal((weather.Days[0].Date, weather.Days.Count), (generated.FirstDay, generated.DayCount));
    }

    private static string FindFolder()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "CanopySim.sln"))) folder = Path.GetDirectoryName(folder) ?? throw new FileNotFoundException("CanopySim.sln");
        return Path.Combine(folder, "scenarios");
    }
}
