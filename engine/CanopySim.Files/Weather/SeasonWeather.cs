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
        if (scenario.Weather.Seed is { } seed) record = Like(record, WeatherClimate.Of(record, scenario.Site), seed);
        return WeatherShift.Apply(record, scenario.Weather, scenario.Site);
    }

    /// <summary>Generated weather over the days of a record, of the climate that the record shows.</summary>
    public static WeatherRecord Like(WeatherRecord record, WeatherClimate climate, ulong seed) =>
        WeatherGenerator.Generate(climate, seed, record.FirstDay, record.DayCount) with
        {
            FilledGaps = record.FilledGaps,
        };
}
