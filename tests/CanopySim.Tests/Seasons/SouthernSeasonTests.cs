using Xunit;

namespace CanopySim.Tests.Seasons;

public class SouthernSeasonTests
{
    /// <summary>The northern weather half a year later at 34° south: the season crosses New Year, and its stages come half a year later.</summary>
    [Fact]
    public void A_southern_season_crosses_new_year()
    {
        var scenario = SeasonCases.Southern;
        var result = Simulation.Run(
            scenario, SeasonCases.ShiftedHalfAYear(scenario), utcOffsetHours: 2, SeasonCases.Draft(new DateOnly(2026, 2, 5)));
        var dates = result.Summary.Dates;
        Assert.Equal(2025, dates.Budbreak!.Value.Year);
        Assert.True(dates.Budbreak < dates.Bloom && dates.Bloom < dates.Veraison && dates.Veraison < dates.End);
        Assert.Equal(2026, dates.End.Year);
        Assert.InRange(result.Summary.Checks.LightClosureMax, 0, 1e-3);
        Assert.InRange(result.Summary.Checks.CarbonClosureMaxRelative, 0, 1e-9);

        // Rows run on over the year's end, and thermal time with them.
        Assert.Equal(new DateOnly(2025, 9, 1), result.Days[0].Date);
        for (var i = 1; i < result.Days.Count; i++)
        {
            Assert.Equal(result.Days[i - 1].Date.AddDays(1), result.Days[i].Date);
            Assert.True(result.Days[i].ThermalTimeDegCD >= result.Days[i - 1].ThermalTimeDegCD);
        }

        // Leaves that unfolded in the old year are as old as the days between.
        Assert.Contains(result.Leaves, leaf => leaf.UnfoldedOn.Year == 2025);
        Assert.All(result.Leaves, leaf => Assert.InRange(leaf.Date.DayNumber - leaf.UnfoldedOn.DayNumber - leaf.AgeD, 0, 1));

        // The same days, but a sun of 34° instead of 38°: buds break within days of the northern ones.
        var north = SeasonCases.Run(SeasonCases.Small, new DateOnly(2025, 4, 25)).Summary.Dates.Budbreak!.Value;
        Assert.InRange(dates.Budbreak.Value.DayNumber - SeasonCases.ToTheSouth(north).DayNumber, -3, 3);
    }
}
