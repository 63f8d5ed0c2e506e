using CanopySim.Sky;
using CanopySim.Weather;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>A spring made for a test: every day alike from January to June, dry.</summary>
internal static class ConstantSpring
{
    public const double MinimumCelsius = 6;
    public const double MaximumCelsius = 21;

    // Share of the light outside the atmosphere on a fairly clear day; humidity is estimated from the minimum. Assumed.
    private const double Clearness = 0.65;
    private const double WindSpeed = 2;

    private static readonly (int Month, int Day) Budbreak = (4, 1);

    public static SeasonCase Season { get; } = new()
    {
        Name = "constant spring",
        Block = "warm-valley",
        Until = (6, 15),
        Change = (scenario, weather) => scenario with
        {
            Season = scenario.Season with { Budbreak = new DateOnly(scenario.Season.Year ?? weather.Days[0].Date.Year, Budbreak.Month, Budbreak.Day) },
        },
        ChangeWeather = (_, season) => Weather(season),
        Work = 27 * 2,
    };

    private static WeatherSeries Weather(PreparedSeason season)
    {
        var (first, site) = (new DateOnly(season.Year, 1, 1), season.Scenario.Site);
        var days = Enumerable.Range(0, 181).Select(day => new DailyReading(
            MinimumCelsius, MaximumCelsius, VaporPressure: null,
            Clearness * ExtraterrestrialRadiation.Daily(site.Latitude, first.AddDays(day).DayOfYear), Rain: 0, WindSpeed)).ToList();
        return WeatherBuilder.Complete(
            new WeatherRecord { Days = days, FirstDay = first }, season.Scenario.Weather, site, season.UtcOffsetHours);
    }
}
