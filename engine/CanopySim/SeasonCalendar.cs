using CanopySim.Weather;

namespace CanopySim;

/// <summary>Which days of the weather make the season, north or south of the equator.</summary>
public sealed record SeasonCalendar
{
    /// <summary>Calendar year of the season's spring.</summary>
    public required int Year { get; init; }

    /// <summary>First day of the weather that counts: the heat sum to budbreak begins.</summary>
    public required DateOnly HeatFrom { get; init; }

    /// <summary>First day in the results, unless buds break before it.</summary>
    public required DateOnly RowsFrom { get; init; }

    /// <summary>Last day of the season, whatever is on the vine: leaves are down by then.</summary>
    public required DateOnly LastDay { get; init; }

    /// <summary>The season that a scenario asks for within its weather.</summary>
    /// <exception cref="SeasonInputException">The weather does not cover the season's beginning.</exception>
    public static SeasonCalendar Of(Scenario scenario, WeatherSeries weather) =>
        Of(scenario, weather.Days[0].Date, weather.Days[^1].Date);

    /// <summary>The season that a scenario asks for within weather from one day to another.</summary>
    /// <exception cref="SeasonInputException">The weather does not cover the season's beginning.</exception>
    public static SeasonCalendar Of(Scenario scenario, DateOnly first, DateOnly last)
    {
        var heatMonth = HeatMonth(scenario.Site);
        var budbreak = scenario.Season.Budbreak;
        var firstWhole = first <= new DateOnly(first.Year, heatMonth, 1) ? first.Year : first.Year + 1;
        var year = scenario.Season.Year ?? budbreak?.Year ?? firstWhole;
        var calendar = InYear(scenario.Site, year);
        var heatFrom = calendar.HeatFrom;
        if (budbreak is { } given && (given < heatFrom || given > calendar.LastDay))
            throw new SeasonInputException("season.budbreak", $"budbreak {given:yyyy-MM-dd} lies outside the season {heatFrom:yyyy-MM-dd} to {calendar.LastDay:yyyy-MM-dd}; expected a day within it");
        var needed = budbreak ?? heatFrom;
        if (needed < first || needed > last)
            throw new SeasonInputException("season.year", $"the weather covers {first:yyyy-MM-dd} to {last:yyyy-MM-dd}; expected it to cover {needed:yyyy-MM-dd}, {(budbreak is null ? "from which heat is summed to budbreak" : "the given budbreak")}");
        return calendar;
    }

    /// <summary>The season whose spring falls into a year.</summary>
    public static SeasonCalendar InYear(Site site, int year)
    {
        const int Months = 9;
        var heatFrom = new DateOnly(year, HeatMonth(site), 1);
        var rowsFrom = heatFrom.AddMonths(1);
        return new SeasonCalendar { Year = year, HeatFrom = heatFrom, RowsFrom = rowsFrom, LastDay = rowsFrom.AddMonths(Months).AddDays(-1) };
    }

    private static int HeatMonth(Site site) => site.IsSouthern ? 8 : 2;
}
