using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Files.Forecast;

/// <summary>The vine as it stands on the day from which a forecast looks ahead.</summary>
/// <param name="Scenario">The block, with the noted work and water, and the traits that the notes gave it.</param>
/// <param name="Season">Its season, run to that day.</param>
/// <param name="Weather">The weather to that day or farther.</param>
/// <param name="AsOf">The day.</param>
public sealed record StandingVine(Scenario Scenario, SeasonResult Season, WeatherSeries Weather, DateOnly AsOf)
{
    /// <summary>Days of the weather from budbreak to the day; none before budbreak.</summary>
    public IEnumerable<WeatherDay> DaysWithLeaves => Season.Summary.Dates.Budbreak is { } budbreak
        ? Weather.Days.Where(day => day.Date >= budbreak && day.Date <= AsOf)
        : [];
}
