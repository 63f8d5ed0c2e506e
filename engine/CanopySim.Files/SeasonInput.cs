using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Weather;

namespace CanopySim.Files;

/// <summary>A scenario with its weather, read and completed.</summary>
public sealed record SeasonInput(ScenarioDocument Document, WeatherSeries Weather, SiteTime Time, double UtcOffsetHours)
{
    /// <exception cref="InputError">Scenario or weather are wrong.</exception>
    public static SeasonInput Read(string path, IReadOnlyList<string> overrides)
    {
        var document = ScenarioFile.Read(path, overrides);
        var scenario = document.Scenario;
        var record = SeasonWeather.Read(document);
        var time = SiteTime.Of(scenario.Site);
        var offset = time.StandardOffsetHours(record.FirstDay.Year);
        return new SeasonInput(
            document, WeatherBuilder.Complete(record, scenario.Weather, scenario.Site, offset), time, offset);
    }
}
