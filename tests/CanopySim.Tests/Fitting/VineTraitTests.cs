using CanopySim.Fitting;
using CanopySim.Tests.Plants;
using Xunit;

namespace CanopySim.Tests.Fitting;

public class VineTraitTests
{
    private static readonly Scenario Block = GrownCanopy.Scenario();

    [Fact]
    public void The_mean_member_is_the_scenario()
    {
        var member = VineTraits.Apply(Block, new double[VineTraits.All.Count]);
        Assert.Equal(Block.Growth, member.Growth);
        Assert.Equal(Block.Fruit, member.Fruit);
        Assert.Equal(Block.Cultivar, member.Cultivar);
        Assert.Equal(Block.Carbon, member.Carbon);
        Assert.Equal(Block.Season, member.Season);
    }

    // Each trait by itself changes the scenario, and none another's section twice over.
    [Fact]
    public void Every_trait_makes_another_vine() =>
        Assert.All(Enumerable.Range(0, VineTraits.All.Count), trait =>
        {
            var deviations = new double[VineTraits.All.Count];
            deviations[trait] = 1;
            Assert.NotEqual(Block, VineTraits.Apply(Block, deviations));
        });

    [Fact]
    public void Spreads_are_of_logarithms_or_of_days()
    {
        var deviations = new double[VineTraits.All.Count];
        deviations[1] = 2;
        Assert.Equal(Block.Growth.Phyllochron * Math.Exp(2 * 0.09), VineTraits.Apply(Block, deviations).Growth.Phyllochron, 1e-9);
        var given = Block with { Season = Block.Season with { Budbreak = new DateOnly(2025, 4, 10) } };
        deviations = new double[VineTraits.All.Count];
        deviations[0] = -1;
        Assert.Equal(new DateOnly(2025, 4, 6), VineTraits.Apply(given, deviations).Season.Budbreak);
    }

    [Fact]
    public void No_member_leaves_the_range_of_a_scenario()
    {
        var deviations = Enumerable.Repeat(30.0, VineTraits.All.Count).ToArray();
        Assert.Equal(80, VineTraits.Apply(Block, deviations).Growth.Phyllochron);
    }
}
