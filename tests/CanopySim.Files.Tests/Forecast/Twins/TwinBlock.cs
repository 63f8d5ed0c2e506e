using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Phenology;
using CanopySim.Weather;

namespace CanopySim.Files.Tests.Forecast.Twins;

/// <summary>The block of all twins: a short piece of a row of warm-valley, so that many seasons can be grown, and its six years of weather.</summary>
internal sealed class TwinBlock
{
    // Eight shoots.
    private const double ShortVine = 0.57;

    private readonly IReadOnlyList<WeatherDay> _days;

    private TwinBlock(Scenario scenario, WeatherRecord record, double utcOffsetHours)
    {
        (Scenario, Record, UtcOffsetHours) = (scenario, record, utcOffsetHours);
        Climate = WeatherClimate.Of(record, scenario.Site);
        _days = WeatherBuilder.Complete(record, scenario.Weather, scenario.Site, utcOffsetHours).Days;
        FirstDay = record.FirstDay.AddDays(record.DayCount);
    }

    public Scenario Scenario { get; }

    /// <summary>The years before the twins'.</summary>
    public WeatherRecord Record { get; }

    public WeatherClimate Climate { get; }

    public double UtcOffsetHours { get; }

    /// <summary>First day of the twins' year.</summary>
    public DateOnly FirstDay { get; }

    /// <param name="scenarioPath">The shipped scenario warm-valley.</param>
    public static TwinBlock Read(string scenarioPath)
    {
        var document = ScenarioFile.Read(scenarioPath, []);
        var record = SeasonWeather.Read(document);
        var last = record.FirstDay.AddDays(record.DayCount - 1);
        var scenario = document.Scenario with
        {
            Rows = document.Scenario.Rows with { VineSpacing = ShortVine },
            Season = document.Scenario.Season with { Year = last.Year + 1, Harvest = HarvestRule.TargetSugar },
        };
        return new TwinBlock(scenario, record, SiteTime.Of(scenario.Site).StandardOffsetHours(record.FirstDay.Year));
    }

    /// <summary>Thermal units of a usual year from a day to another, at a base temperature [°C d].</summary>
    public double UsualUnits((int Month, int Day) from, (int Month, int Day) to, double baseTemperature)
    {
        var growth = Scenario.Growth with { BaseTemperature = baseTemperature };
        var days = _days.Where(day => (day.Date.Month, day.Date.Day).CompareTo(from) >= 0 && (day.Date.Month, day.Date.Day).CompareTo(to) < 0);
        var years = _days.Select(day => day.Date.Year).Distinct().Count();
        return days.Sum(day => day.Hours.Average(hour => ThermalResponse.Rate(hour.AirTemperatureCelsius, growth))) / years;
    }
}
