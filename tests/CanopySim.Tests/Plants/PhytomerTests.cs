using CanopySim.Plants;
using Xunit;

namespace CanopySim.Tests.Plants;

public class PhytomerTests
{
    // Rhythm P0-P1-P2, P0 without tendril or cluster (Lebon et al. 2004, Ann Bot 93:263-274); the first two nodes bear none (Pratt 1974, from memory).
    [Fact]
    public void Two_nodes_of_three_bear_tendrils_above_the_lowest()
    {
        var bearing = Enumerable.Range(1, 12).Where(rank => Phytomer(rank).HasTendril);
        Assert.Equal([3, 4, 6, 7, 9, 10, 12], bearing);
    }

    // LA = -0.465 + 0.914 L W with W/L about 1.1 gives about 1.0 L² (Buttaro et al. 2015, Photosynthetica 53:342-348), within 5 %.
    [Fact]
    public void Midrib_agrees_with_the_published_allometry()
    {
        var leaf = Phytomer(8).Leaf!;
        leaf.Area = 0.0100;
        var midrib = leaf.MidribLength * 100;
        Assert.InRange((-0.465 + (0.914 * 1.1 * midrib * midrib)) / 100, 0.95, 1.05);
    }

    [Fact]
    public void Clusters_stand_at_nodes_3_to_7()
    {
        var grown = new GrownCanopy(GrownCanopy.Scenario()).Grow(25);
        var ranks = grown.Canopy.PrimaryShoots().SelectMany(shoot => shoot.Phytomers).Where(node => node.Cluster is not null).Select(node => node.Rank);
        Assert.All(ranks, rank => Assert.InRange(rank, 3, 7));
        // 1.8 a shoot on 23 shoots, binomial: ± 4 standard errors of sqrt(0.8 x 0.2 / 23).
        var perShoot = grown.Canopy.Vines[0].Clusters().Count() / (double)grown.Canopy.Vines[0].Shoots.Count;
        Assert.InRange(perShoot, 1.8 - 0.34, 1.8 + 0.34);
    }

    private static Phytomer Phytomer(int rank)
    {
        var shoot = new Shoot(new ShootId(0), new VineId(0), 1, 0, 1);
        return new Phytomer(rank, 0.05, new Leaf(new LeafId(0), shoot, rank, 0.015));
    }
}
