using CanopySim.Assessment;
using CanopySim.Growth;
using CanopySim.Plants;
using Xunit;

namespace CanopySim.Tests.Assessment;

public class ShootTipTests
{
    private static readonly GrowthParameters Growth = new();

    // A node every 28 degC d; internodes 6 cm when full-grown.
    [Fact]
    public void Tendrils_overtop_a_tip_that_adds_nodes_fast() =>
        Assert.Equal(TipState.GrowingFreely, ShootTip.Of(Grown(28, 0.06), Growth));

    // Common practice, no source: on a slow shoot the tendrils have hardened before the next node comes.
    [Theory]
    [InlineData(200)]
    [InlineData(400)]
    public void A_slow_tip_stands_over_its_tendrils(double unitsANode) =>
        Assert.Equal(TipState.Slowing, ShootTip.Of(Grown(unitsANode, 0.06), Growth));

    [Fact]
    public void Tendrils_of_starved_internodes_do_not_overtop_the_tip() =>
        Assert.Equal(TipState.Slowing, ShootTip.Of(Grown(28, 0.004), Growth));

    [Fact]
    public void A_stopped_tip_is_stopped()
    {
        var shoot = Grown(28, 0.06);
        shoot.TipStopped = true;
        Assert.Equal(TipState.Stopped, ShootTip.Of(shoot, Growth));
    }

    [Fact]
    public void The_share_counts_shoots()
    {
        var vine = new Vine(new VineId(0), 0.75, new CanopySim.Carbon.VineCarbon(1000, 100));
        vine.Add(Grown(28, 0.06));
        vine.Add(Grown(200, 0.06));
        Assert.Equal(0.5, ShootTip.GrowingFreelyShare(new Canopy([vine]), Growth));
        Assert.Equal(0, ShootTip.GrowingFreelyShare(new Canopy([]), Growth));
    }

    // Fifteen nodes, the uppermost half a node old: rank 15 bears a tendril (position 1 of the rhythm).
    private static Shoot Grown(double unitsANode, double internode)
    {
        var shoot = new Shoot(new ShootId(0), new VineId(0), 1, 0.75, 1);
        for (var rank = 1; rank <= 15; rank++)
        {
            var age = (15.5 - rank) * unitsANode;
            shoot.Add(new Phytomer(rank, internode, new Leaf(new LeafId(rank), shoot, rank, 0.01))
            {
                ThermalAge = age,
                InternodeLength = internode * ExpansionCourse.Share(age, Growth.InternodeElongation),
            });
        }

        return shoot;
    }
}
