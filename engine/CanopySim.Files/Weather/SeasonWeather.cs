using CanopySim.Files.Scenarios;
using CanopySim.Weather;

namespace CanopySim.Files.Weather;

/// <summary>The weather that a scenario's season is grown in: its file's record, or one made like it.</summary>
public static class SeasonWeather
{
    /// <summary>
    /// The record of the scenario's file; with <c>weather.seed</c> generated weather over the same days; either warmed and with more or less
    /// rain where the scenario asks for it.
    /// </summary>
    /// <exception cref="InputError">The file is wrong.</exception>
    /// <exception cref="SeasonInputException">The record is too short to make weather like it.</exception>
    public static WeatherRecord Read(ScenarioDocument document)
    {
        var scenario = document.Scenario;
        var record = WeatherFile.Read(document.WeatherPath, scenario.Weather, scenario.Site, scenario.Season.Year);
        return WeatherShift.Apply(Made(record, scenario), scenario.Weather, scenario.Site);
    }

    private static WeatherRecord Made(WeatherRecord record, Scenario scenario) => scenario.Weather.Seed is { } seed
        ? WeatherGenerator.Generate(WeatherClimate.Of(record, scenario.Site), seed, record.FirstDay, record.DayCount) with
        {
            FilledGaps = record.FilledGaps,
        }
        : record;
}
