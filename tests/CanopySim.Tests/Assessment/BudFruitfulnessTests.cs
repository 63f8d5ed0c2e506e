using CanopySim.Assessment;
using CanopySim.Light;
using CanopySim.Results;
using CanopySim.Tests.Seasons;
using CanopySim.Training;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Assessment;

public class BudFruitfulnessTests(BudFruitfulnessTests.Densities densities)
    : IClassFixture<BudFruitfulnessTests.Densities>
{
    // All cultivars barren at 15 °C, best from 25 to 30 °C: Buttrose 1969, 1970; Sanchez & Dokoozlian 2005. Four hours
    // count, one is too short.
    [Theory]
    [InlineData(4, 14, 0)]
    [InlineData(4, 15, 0)]
    [InlineData(4, 21.25, 0.5)]
    [InlineData(4, 27.5, 1)]
    [InlineData(4, 35, 1)]
    [InlineData(1, 27, 0)]
    public void Warmth_is_that_of_the_warmest_four_hours(int hours, double degrees, double expected)
    {
        var buds = new BudFruitfulness(new FruitfulnessParameters(), new Optics());
        var weather = new WeatherDay
        {
            Date = new DateOnly(2025, 6, 1),
            Hours = [.. Enumerable.Range(0, 24)
            .Select(hour => new WeatherHour(hour is >= 12 && hour < 12 + hours ? degrees : 11, 1, 101, 2, 0, 0, 0, 0))],
        };
        Assert.Equal(expected, buds.Warmth(weather), 1e-12);
    }

    // Shaded canes are less fruitful by 30 to 60 % in dense canopies: May & Antcliff; Smart; from memory. Light alone
    // is held here: buds of starved shoots are laid down later, when it is warmer.
    [Fact]
    public void A_dense_canopy_takes_light_from_next_years_buds()
    {
        var (open, dense) = (densities.Open.Summary.NextYear!, densities.Dense.Summary.NextYear!);
        Assert.InRange(1 - (dense.LightFactor / open.LightFactor), 0.15, 0.6);
        Assert.True(dense.Fruitfulness < open.Fruitfulness, $"{dense.Fruitfulness} dense, {open.Fruitfulness} open");
        Assert.True(dense.ParUmolM2S < 0.7 * open.ParUmolM2S);
        Assert.True(dense.Spread > open.Spread);
    }

    [Fact]
    public void It_is_a_share_of_the_best_about_bloom()
    {
        foreach (var season in new[] { densities.Open, densities.Dense })
        {
            var (year, dates) = (season.Summary.NextYear!, season.Summary.Dates);
            Assert.InRange(year.Fruitfulness, 0, 1);
            Assert.True(year.Least <= year.Fruitfulness && year.Fruitfulness <= year.Most);
            Assert.True(year.Fruitfulness <= Math.Min(year.LightFactor, year.TemperatureFactor) + 1e-12);
            Assert.True(
                dates.Budbreak < year.From && year.From < dates.Bloom && dates.Bloom!.Value.AddDays(-14) < year.To);
        }
    }

    // It looks and touches nothing.
    [Fact]
    public void Parameters_of_the_assessment_move_no_season()
    {
        var altered = SeasonCases.Run(
            Densities.Block(10) with
            {
                Fruitfulness = new FruitfulnessParameters { FullLight = 2000, RenewalNodes = 3 },
                FruitHeat = new FruitHeatParameters { Compactness = 1, BrowningTemperature = 30 },
            },
            Densities.End);
        Assert.Equal(densities.Open.Days, altered.Days);
        Assert.True(altered.Summary.NextYear!.Fruitfulness < densities.Open.Summary.NextYear!.Fruitfulness);
        Assert.True(
            altered.Summary.FruitHeat!.HighestSurfaceDegC > densities.Open.Summary.FruitHeat!.HighestSurfaceDegC);
    }

    [Fact]
    public void Before_bloom_there_is_nothing_to_tell()
    {
        var spring = SeasonCases.Run(Densities.Block(10), new DateOnly(2025, 5, 1));
        Assert.Null(spring.Summary.NextYear);
        Assert.Null(spring.Summary.FruitLight);
        Assert.Null(spring.Summary.FruitHeat);
        Assert.Null(spring.Summary.CanopyScore);
        Assert.Empty(spring.Assessment.CanopySheet);
        Assert.Empty(spring.Assessment.FruitLight);
    }

    /// <summary>Ten and forty shoots a meter, until after the buds' weeks.</summary>
    public sealed class Densities
    {
        public static readonly DateOnly End = new(2025, 7, 1);

        public SeasonResult Open { get; } = SeasonCases.Run(Block(10), End);

        public SeasonResult Dense { get; } = SeasonCases.Run(Block(40), End);

        public static Scenario Block(double shoots) =>
            SeasonCases.Small with { CanopyWork = new CanopyWork { ShootsPerMeter = shoots } };
    }
}
