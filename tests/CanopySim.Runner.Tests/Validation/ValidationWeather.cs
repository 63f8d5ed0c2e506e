using System.Collections.Concurrent;
using CanopySim.Files;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Phenology;
using CanopySim.Weather;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Shipped blocks with the weather of one of their seasons, read as the program reads them.</summary>
internal sealed class ValidationWeather
{
    private readonly ConcurrentDictionary<(string Block, ulong? Seed, int? Year), Lazy<PreparedSeason>> _read = new();

    /// <summary>The block of a case as shipped, with its weather from January of the season to the June after it.</summary>
    public PreparedSeason Of(SeasonCase asked) =>
        _read.GetOrAdd((asked.Block, asked.WeatherSeed, asked.Year), _ => new Lazy<PreparedSeason>(() => Read(asked))).Value;

    /// <summary>The first day on which a scenario blooms, from phenology alone: no frost restarts it in these blocks.</summary>
    public static DateOnly Bloom(Scenario scenario, WeatherSeries weather) => StagesUntil(scenario, weather, 0, stages => stages.Bloom);

    /// <summary>The day on which buds break by the heat sum, so many years after the scenario's season.</summary>
    public static DateOnly Budbreak(Scenario scenario, WeatherSeries weather, int yearsLater) =>
        StagesUntil(scenario, weather, yearsLater, stages => stages.Budbreak);

    private static DateOnly StagesUntil(Scenario scenario, WeatherSeries weather, int yearsLater, Func<Stages, DateOnly?> stage)
    {
        var heatFrom = SeasonCalendar.Of(scenario, weather).HeatFrom.AddYears(yearsLater);
        var stages = new Stages(scenario.Cultivar, scenario.Growth, yearsLater == 0 ? scenario.Season.Budbreak : null);
        foreach (var day in weather.Days.Where(day => day.Date >= heatFrom))
        {
            stages.Advance(day, supplyIndex: 1);
            if (stage(stages) is { } reached) return reached;
        }

        throw new InvalidOperationException($"the weather of {scenario.Name} ends before the stage is reached");
    }

    private static PreparedSeason Read(SeasonCase asked)
    {
        var document = ScenarioFile.Read(Path.Combine(RunnerProcess.Repository, "scenarios", asked.Block, "scenario.yaml"));
        var shipped = document.Scenario;
        var scenario = shipped with
        {
            Weather = shipped.Weather with { Seed = asked.WeatherSeed },
            Season = shipped.Season with { Year = asked.Year ?? shipped.Season.Year },
        };
        var record = SeasonWeather.Read(document with { Scenario = scenario });
        var offset = SiteTime.Of(scenario.Site).StandardOffsetHours(record.FirstDay.Year);
        var year = scenario.Season.Year ?? record.FirstDay.Year;
        var cut = Cut(record, new DateOnly(year, 1, 1), new DateOnly(year + 1, 6, 30));
        return new PreparedSeason(scenario, WeatherBuilder.Complete(cut, scenario.Weather, scenario.Site, offset), offset);
    }

    // Years that no season looks at are not made into hours.
    private static WeatherRecord Cut(WeatherRecord record, DateOnly from, DateOnly to)
    {
        var skipped = Math.Max(0, from.DayNumber - record.FirstDay.DayNumber);
        var taken = Math.Min(record.DayCount, to.DayNumber - record.FirstDay.DayNumber + 1) - skipped;
        return record with
        {
            FirstDay = record.FirstDay.AddDays(skipped),
            Days = [.. record.Days.Skip(skipped).Take(taken)],
            Hours = [.. record.Hours.Skip(24 * skipped).Take(24 * taken)],
        };
    }
}
