using System.Numerics;
using CanopySim.Plants;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class ShootPathTests
{
    [Theory]
    [InlineData(TrellisForm.UprightHedge)]
    [InlineData(TrellisForm.HangingCurtain)]
    [InlineData(TrellisForm.Overhead)]
    public void Shoots_start_at_the_cordon_and_stay_above_ground(TrellisForm form)
    {
        var scenario = GrownCanopy.Scenario(form);
        foreach (var (shoot, points) in Paths(scenario, 70))
        {
            Assert.Equal(shoot.Phytomers.Count + 1, points.Length);
            Assert.Equal(scenario.Trellis.CordonHeightOrDefault, points[0].Z, 1e-5);
            Assert.All(points, point => Assert.True(point.Z >= 0.0999f));
        }
    }

    [Theory]
    [InlineData(TrellisForm.UprightHedge)]
    [InlineData(TrellisForm.Overhead)]
    public void Internodes_keep_their_length(TrellisForm form)
    {
        foreach (var (shoot, points) in Paths(GrownCanopy.Scenario(form), 40))
            for (var i = 0; i < shoot.Phytomers.Count; i++)
                Assert.Equal(shoot.Phytomers[i].InternodeLength, Vector3.Distance(points[i], points[i + 1]), 1e-5);
    }

    [Fact]
    public void Catch_wires_hold_a_hedge()
    {
        var scenario = GrownCanopy.Scenario();
        var half = 0.5 * scenario.Trellis.FoliageWidthOrDefault;
        foreach (var (shoot, points) in Paths(scenario, 70))
        {
            // The internode that meets the wire may reach over it by its own length.
            var over = shoot.Phytomers.Max(phytomer => phytomer.InternodeLength);
            foreach (var point in points.TakeWhile(point => point.Z < scenario.Trellis.TopWireHeightOrDefault))
                Assert.InRange(Math.Abs(point.X), 0, half + over);
        }
    }

    [Fact]
    public void A_hedge_stands_up()
    {
        foreach (var (shoot, points) in Paths(GrownCanopy.Scenario(), 40))
            if (shoot.Length > 0.4) Assert.True(points[^1].Z > points[0].Z + (0.6 * Math.Min(shoot.Length, 1.1)));
    }

    [Fact]
    public void A_curtain_hangs_below_its_cordon()
    {
        var scenario = GrownCanopy.Scenario(TrellisForm.HangingCurtain);
        var half = 0.5 * scenario.Trellis.FoliageWidthOrDefault;
        foreach (var (shoot, points) in Paths(scenario, 60))
        {
            Assert.All(points, point => Assert.InRange(Math.Abs(point.X), 0, half + 1e-5));
            if (shoot.Length > 0.8)
                Assert.True(points[^1].Z < points[0].Z - 0.2,
                $"tip at {points[^1].Z} of a shoot {shoot.Length} m long");
        }
    }

    [Fact]
    public void A_roof_s_shoots_lie_near_its_plane()
    {
        var scenario = GrownCanopy.Scenario(TrellisForm.Overhead);
        var half = 0.5 * scenario.Trellis.FoliageWidthOrDefault;
        foreach (var (_, points) in Paths(scenario, 60))
            foreach (var point in points.TakeWhile(point => Math.Abs(point.X) < half))
                Assert.InRange(point.Z - scenario.Trellis.TopWireHeightOrDefault, -0.05, 0.15);
    }

    [Fact]
    public void The_same_seed_draws_the_same_path()
    {
        var scenario = GrownCanopy.Scenario();
        var shoot = new GrownCanopy(scenario).Grow(30).Canopy.PrimaryShoots().First();
        Assert.Equal(new ShootPath(scenario).Nodes(shoot), new ShootPath(scenario).Nodes(shoot));
        Assert.NotEqual(new ShootPath(scenario).Nodes(shoot), new ShootPath(scenario with { Seed = 2 }).Nodes(shoot));
    }

    private static IEnumerable<(Shoot Shoot, Vector3[] Points)> Paths(Scenario scenario, int days)
    {
        var path = new ShootPath(scenario);
        return new GrownCanopy(scenario).Grow(days).Canopy.PrimaryShoots().Select(shoot => (shoot, path.Nodes(shoot)));
    }
}
