using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>
/// The rehearsal goes through all that a season does: what it left out would be compiled in the middle of the real one, without a word.
/// </summary>
public class RehearsalTests
{
    [Fact]
    public void It_is_a_whole_season_up_to_ripe_fruit()
    {
        var season = Rehearsal.Play(Quality.Draft);
        Assert.Equal("harvest", season.Summary.EndReason);
        Assert.NotNull(season.Summary.Canopy);
        Assert.NotNull(season.Summary.Harvest);
        Assert.NotEmpty(season.Summary.RipeningCarbonByLeafAge);
        Assert.NotEmpty(season.Assessment.CanopySheet);
        Assert.NotEmpty(season.Assessment.FruitLight);
        Assert.NotEmpty(season.Work);
    }

    // It runs beside the reading of a scenario: a long one would be in the season's way.
    [Fact]
    public void It_is_small()
    {
        var season = Rehearsal.Play(Quality.Draft);
        Assert.InRange(season.Days.Count, 20, 60);
        Assert.InRange(season.Summary.Checks.LeavesMax, 8, 120);
    }
}
