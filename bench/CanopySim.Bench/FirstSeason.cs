using CanopySim.Files;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Weather;

namespace CanopySim.Bench;

/// <summary>The shipped scenario, read once for all benches.</summary>
public static class FirstSeason
{
    private static readonly Lazy<string> Folder = new(() =>
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "CanopySim.sln")))
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("the bench must run inside the repository");
        return folder;
    });

    private static readonly Lazy<(Scenario Scenario, WeatherSeries Weather, double Offset)> Read = new(() =>
    {
        var document = ScenarioFile.Read(Path.Combine(Repository, "scenarios", "first-season", "scenario.yaml"));
        var record = SeasonWeather.Read(document);
        var offset = SiteTime.Of(document.Scenario.Site).StandardOffsetHours(record.FirstDay.Year);
        return (document.Scenario, WeatherBuilder.Complete(record, document.Scenario.Weather, document.Scenario.Site, offset), offset);
    });

    public static string Repository => Folder.Value;

    public static Scenario Scenario => Read.Value.Scenario;

    public static WeatherSeries Weather => Read.Value.Weather;

    public static double Offset => Read.Value.Offset;
}
