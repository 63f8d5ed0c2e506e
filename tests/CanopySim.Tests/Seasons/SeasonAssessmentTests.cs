using CanopySim.Assessment;
using Xunit;

namespace CanopySim.Tests.Seasons;

public class SeasonAssessmentTests(WholeSeason season) : IClassFixture<WholeSeason>
{
    [Fact]
    public void Fruit_is_followed_from_set_to_harvest()
    {
        var dates = season.Result.Summary.Dates;
        var days = dates.End.DayNumber - dates.Bloom!.Value.DayNumber + 1;
        foreach (var side in season.Result.Assessment.FruitLight.GroupBy(row => row.Side))
        {
            Assert.Equal(days, side.Count());
            Assert.Equal(dates.Bloom, side.First().Date);
        }

        Assert.Equal(season.Result.Assessment.FruitLight.Count, season.Result.Assessment.FruitHeat.Count);
        Assert.All(season.Result.Assessment.FruitLight, row => Assert.InRange(row.ShareOfIncident ?? -1, 0.001, 0.8));
        var incident = season.Result.Days.ToDictionary(day => day.Date, day => day.IncidentParMolM2);
        Assert.All(season.Result.Assessment.FruitLight, row => Assert.Equal(incident[row.Date], row.IncidentParMolM2, 0.02 * incident[row.Date]));
    }

    // Hours of a week over its days give the days' sums again.
    [Fact]
    public void Hours_of_the_weeks_add_up_to_the_days()
    {
        var (days, hours) = (season.Result.Assessment.FruitLight, season.Result.Assessment.FruitLightHours);
        foreach (var side in days.Select(row => row.Side).Distinct())
        {
            var daily = days.Where(row => row.Side == side).Sum(row => row.ParMolM2);
            var hourly = hours.Where(row => row.Side == side).Sum(row => row.ParUmolM2S * 3600e-6 * (row.To.DayNumber - row.From.DayNumber + 1));
            Assert.Equal(daily, hourly, 1e-9 * daily);
        }
    }

    [Fact]
    public void The_summary_weighs_the_sides_by_their_clusters()
    {
        var light = season.Result.Summary.FruitLight!;
        var rows = season.Result.Assessment.FruitLight.Where(row => row.Date >= season.Result.Summary.Dates.Veraison).ToList();
        Assert.Equal(rows.Sum(row => row.Clusters * row.ParMolM2) / rows.Sum(row => row.Clusters), light.ParMolM2D, 1e-12);
        Assert.Equal(["west", "east"], light.Sides.Select(side => side.Side.Facing));
        Assert.True(light.Sides[1].MorningShare > 0.5 && light.Sides[0].MorningShare < 0.5);
    }

    [Fact]
    public void The_sheet_says_what_the_summary_says()
    {
        var (summary, rows) = (season.Result.Summary, season.Result.Assessment.CanopySheet);
        double Value(string item) => rows.Single(row => row.Item == item && row.Wall is null).Value!.Value;
        Assert.Equal(summary.Canopy!.GapFraction, Value("gaps"));
        Assert.Equal(summary.Canopy.LeafLayerNumber, Value("leaf_layers"));
        Assert.Equal(summary.Canopy.InteriorClusterFraction, Value("interior_clusters"));
        Assert.Equal(summary.Harvest!.LeafAreaM2PerKgFruit, Value("leaf_area_per_fruit"));
        Assert.Equal(summary.Harvest.YieldToPrunings, Value("yield_to_prunings"));

        // A hedge 0.35 m wide and some 1.1 m high: 3 to 7 m² m⁻³ published for such canopies, and none is five times as dense.
        Assert.InRange(Value("leaf_area_density"), 2, 15);
        Assert.Equal(60, summary.CanopyScore!.MostPoints);
        Assert.DoesNotContain(rows, row => row.Value is { } value && !double.IsFinite(value));
        Assert.Equal(2, rows.Count(row => row.Verdict == SheetVerdict.JudgeInRow));
    }
}
