using CanopySim.Results;
using CanopySim.Training;
using CanopySim.Water;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Seasons;

/// <summary>A short piece of row until midsummer, unaltered: what the altered ones are held against.</summary>
public sealed class UnalteredSeason
{
    public static DateOnly Until { get; } = new(2025, 7, 5);

    public SeasonResult Result { get; } = SeasonCases.Run(SeasonCases.Small, Until);
}

public class AlteredSeasonsTests(UnalteredSeason unaltered) : IClassFixture<UnalteredSeason>
{
    private static readonly DateOnly SpringFrost = new(2025, 4, 22);

    [Fact]
    public void Without_veraison_the_canopy_with_the_most_leaf_is_kept()
    {
        var portrait = unaltered.Result.Portrait!;
        Assert.Null(unaltered.Result.Summary.Dates.Veraison);
        Assert.False(portrait.IsAtVeraison);
        Assert.Equal(unaltered.Result.Days.MaxBy(day => day.LeafAreaM2PerVine)!.Date, portrait.Date);
    }

    [Fact]
    public void A_spring_frost_wakes_secondary_buds_with_later_bloom_and_fewer_clusters()
    {
        var until = unaltered.Result.Summary.Dates.Bloom!.Value.AddDays(32);
        var frozen = SeasonCases.Run(SeasonCases.Small, until, Frost(SpringFrost, -4));
        AssertCloses(frozen);
        Assert.Equal(unaltered.Result.Summary.Dates.Budbreak, frozen.Summary.Dates.Budbreak);
        Assert.True(LeafArea(frozen, SpringFrost.AddDays(-1)) > 0);
        Assert.Equal(0, LeafArea(frozen, SpringFrost));
        Assert.Equal(0, LeafArea(frozen, SpringFrost.AddDays(11)));
        Assert.True(LeafArea(frozen, SpringFrost.AddDays(20)) > 0);

        // The way to bloom begins when the secondary buds break, 12 d after the frost; the sum to bloom is passed within the last
        // day, which brings at most 25 units.
        var bloom = frozen.Summary.Dates.Bloom!.Value;
        Assert.True(bloom > unaltered.Result.Summary.Dates.Bloom);
        var unitsAtBreak = ThermalTime(frozen, SpringFrost.AddDays(12));
        var sum = SeasonCases.Small.Cultivar.BloomSum;
        Assert.InRange(ThermalTime(frozen, bloom) - unitsAtBreak, sum, sum + 25);
    }

    // A third of the clusters: common practice, no source. Counted on 8 June, when both have their bearing nodes.
    [Fact]
    public void Secondary_buds_bear_fewer_clusters()
    {
        var day = new DateOnly(2025, 6, 8);
        int Clusters(Func<DateOnly, DailyReading, DailyReading>? alter) => Simulation.CanopyOn(
            SeasonCases.Small, SeasonCases.Northern(SeasonCases.Small, alter), SeasonCases.UtcOffset, SeasonCases.Draft(), day)
            .Vines.Sum(vine => vine.Clusters().Count());
        Assert.True(Clusters(Frost(SpringFrost, -4)) < 0.7 * Clusters(null));
    }

    /// <summary>The rule is the same for any day after bloom; an early one keeps the test short.</summary>
    [Fact]
    public void A_killing_frost_after_bloom_ends_the_season()
    {
        var day = unaltered.Result.Summary.Dates.Bloom!.Value.AddDays(4);
        var frozen = SeasonCases.Run(SeasonCases.Small, UnalteredSeason.Until, Frost(day, -4));
        Assert.Equal("killing_frost", frozen.Summary.EndReason);
        Assert.Equal(day, frozen.Summary.Dates.End);
        Assert.Equal("until", unaltered.Result.Summary.EndReason);
        Assert.Equal(UnalteredSeason.Until, unaltered.Result.Summary.Dates.End);
    }

    // Soil drying slows all development, laterals before the main axis: Lebon et al. 2006, Ann Bot 98:175-185.
    [Fact]
    public void Dry_soil_shortens_shoots_and_laterals_more()
    {
        var dry = SeasonCases.Run(
            SeasonCases.Small with { Soil = new SoilParameters { TranspirableWater = 120, InitialShare = 0.5 } },
            UnalteredSeason.Until,
            (_, reading) => reading with { Rain = 0 });
        AssertCloses(dry);
        var (last, lastDry) = (unaltered.Result.Days[^1], dry.Days[^1]);
        Assert.True(lastDry.SoilWaterFraction < 0.3);
        Assert.True(lastDry.ShootLengthCm < 0.85 * last.ShootLengthCm, $"{lastDry.ShootLengthCm} against {last.ShootLengthCm} cm");
        Assert.True(lastDry.LateralLeafAreaM2PerVine / last.LateralLeafAreaM2PerVine < lastDry.LeafAreaM2PerVine / last.LeafAreaM2PerVine);
    }

    [Fact]
    public void Topping_by_date_shortens_shoots_and_makes_laterals()
    {
        var day = unaltered.Result.Summary.Dates.Bloom!.Value.AddDays(3);
        var topped = SeasonCases.Run(
            SeasonCases.Small with { CanopyWork = new CanopyWork { Topping = [new Topping { On = day, Nodes = 12 }] } }, UnalteredSeason.Until);
        AssertCloses(topped);
        Assert.True(topped.Days[^1].NodesPerShoot <= 12);
        Assert.True(unaltered.Result.Days[^1].NodesPerShoot > 15);
        Assert.True(
            topped.Days[^1].LateralLeafAreaM2PerVine > 1.2 * unaltered.Result.Days[^1].LateralLeafAreaM2PerVine,
            $"{topped.Days[^1].LateralLeafAreaM2PerVine} against {unaltered.Result.Days[^1].LateralLeafAreaM2PerVine} m²");
        var before = topped.Days.Single(row => row.Date == day.AddDays(-1));
        Assert.Equal(unaltered.Result.Days.Single(row => row.Date == day.AddDays(-1)), before);
    }

    [Fact]
    public void Two_vines_in_a_cell_differ_but_little()
    {
        var until = new DateOnly(2025, 5, 31);
        var rows = SeasonCases.Small.Rows with { VinesInCell = 2 };
        var two = SeasonCases.Run(SeasonCases.Small with { Rows = rows }, until);
        AssertCloses(two);
        Assert.Equal([0, 1], two.Leaves.Select(leaf => leaf.Vine).Distinct().Order());
        Assert.Equal(two.Leaves.Count, two.Leaves.Select(leaf => leaf.LeafId).Distinct().Count());
        var one = unaltered.Result.Days.Single(day => day.Date == until);
        // Nine shoots with a spread of vigor of 12 %: means of 9 and 18 differ by 5 %; three times that.
        Assert.InRange(two.Days[^1].LeafAreaM2PerVine / one.LeafAreaM2PerVine, 0.85, 1.15);
    }

    private static void AssertCloses(SeasonResult result)
    {
        Assert.InRange(result.Summary.Checks.LightClosureMax, 0, 1e-3);
        Assert.InRange(result.Summary.Checks.CarbonClosureMaxRelative, 0, 1e-9);
    }

    private static double LeafArea(SeasonResult result, DateOnly date) => result.Days.Single(day => day.Date == date).LeafAreaM2PerVine;

    private static double ThermalTime(SeasonResult result, DateOnly date) => result.Days.Single(day => day.Date == date).ThermalTimeDegCD;

    private static Func<DateOnly, DailyReading, DailyReading> Frost(DateOnly on, double minimum) =>
        (date, reading) => date == on ? reading with { MinimumTemperatureCelsius = minimum } : reading;
}
