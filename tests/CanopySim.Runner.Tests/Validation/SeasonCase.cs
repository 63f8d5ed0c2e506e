using CanopySim.Weather;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>A season that studies ask for: a shipped block, its weather, what is changed. Known by itself: the same object, the same season.</summary>
internal sealed class SeasonCase
{
    public required string Name { get; init; }

    /// <summary>Folder of the scenario.</summary>
    public required string Block { get; init; }

    /// <summary>Seed of generated weather; null for the record itself.</summary>
    public ulong? WeatherSeed { get; init; }

    /// <summary>Year of the season; null for the scenario's.</summary>
    public int? Year { get; init; }

    /// <summary>What is changed in the block; it may look at the weather, for dates that follow from it.</summary>
    public Func<Scenario, WeatherSeries, Scenario> Change { get; init; } = (scenario, _) => scenario;

    /// <summary>What is changed in the weather.</summary>
    public Func<WeatherSeries, PreparedSeason, WeatherSeries> ChangeWeather { get; init; } = (weather, _) => weather;

    /// <summary>Last month and day; null for the season's own end.</summary>
    public (int Month, int Day)? Until { get; init; }

    /// <summary>Days of a year whose leaves are listed one by one.</summary>
    public Func<int, IReadOnlyList<DateOnly>> LeavesOn { get; init; } = _ => [];

    /// <summary>Rough work, to start the longest first: shoots of the vine times months.</summary>
    public double Work { get; init; } = 27 * 9;

    public override string ToString() => Name;
}

/// <summary>A season ready to run.</summary>
internal sealed record PreparedSeason(Scenario Scenario, WeatherSeries Weather, double UtcOffsetHours)
{
    public int Year => Scenario.Season.Year ?? Weather.Days[0].Date.Year;
}
