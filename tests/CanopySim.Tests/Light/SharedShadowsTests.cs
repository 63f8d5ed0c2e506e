using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>Suns that stand within the quality's angle of one already drawn cast that one's shadows, and bring their own power.</summary>
public class SharedShadowsTests
{
    private static readonly Vector3 First = SkyRings.Direction(40, 100);

    private static readonly Vector3[] Sky = SkyRings.Spiral(30);

    [Theory]
    [InlineData(0.3, true)]
    [InlineData(0.95, true)]
    [InlineData(1.05, false)]
    [InlineData(5, false)]
    public void Near_suns_share_shadows_and_others_do_not(double degreesAway, bool shared)
    {
        var geometry = Geometry(1);
        var first = geometry.Solve([LightCases.Sun(First)], LightCases.Black, 1);
        var sun = SkyRings.Direction(40 + degreesAway, 100);
        var second = geometry.Solve([LightCases.Sun(sun)], LightCases.Black, 1);
        var own = Geometry(1).Solve([LightCases.Sun(sun)], LightCases.Black, 1);
        Assert.NotEqual(first.SunlitShare, own.SunlitShare);
        Assert.Equal(shared ? first.SunlitShare : own.SunlitShare, second.SunlitShare);
        Assert.Equal(shared ? first.GroundSunlitFraction : own.GroundSunlitFraction, second.GroundSunlitFraction);
    }

    [Fact]
    public void Without_an_angle_every_sun_casts_its_own()
    {
        var geometry = Geometry(0);
        geometry.Solve([LightCases.Sun(First)], LightCases.Black, 1);
        var sun = SkyRings.Direction(40.2, 100);
        var own = Geometry(0).Solve([LightCases.Sun(sun)], LightCases.Black, 1);
        Assert.Equal(own.SunlitShare, geometry.Solve([LightCases.Sun(sun)], LightCases.Black, 1).SunlitShare);
    }

    [Fact]
    public void Of_two_near_suns_the_nearer_lends_its_shadows()
    {
        var geometry = Geometry(2);
        geometry.Solve([LightCases.Sun(First)], LightCases.Black, 1);
        var other = geometry.Solve([LightCases.Sun(SkyRings.Direction(43, 100))], LightCases.Black, 1);
        Assert.Equal(other.SunlitShare, geometry.Solve([LightCases.Sun(SkyRings.Direction(41.8, 100))], LightCases.Black, 1).SunlitShare);
    }

    /// <summary>A shadow that was lent is lent no further: shadows must not creep along with the sun from day to day.</summary>
    [Fact]
    public void Shadows_are_lent_by_the_sun_that_cast_them()
    {
        var geometry = Geometry(1);
        var first = geometry.Solve([LightCases.Sun(First)], LightCases.Black, 1);
        geometry.Solve([LightCases.Sun(SkyRings.Direction(40.8, 100))], LightCases.Black, 1);
        var third = geometry.Solve([LightCases.Sun(SkyRings.Direction(41.6, 100))], LightCases.Black, 1);
        Assert.NotEqual(first.SunlitShare, third.SunlitShare);
    }

    [Theory]
    [InlineData(0, 0, 40)]
    [InlineData(0, 0, 88)]
    [InlineData(0.3, -0.1, 60)]
    public void Shared_shadows_bring_the_power_of_their_hour(double riseAcross, double riseAlong, double zenith)
    {
        var geometry = Geometry(1, riseAcross, riseAlong);
        geometry.Solve([LightCases.Sun(SkyRings.Direction(zenith, 100))], new Optics(), 1);
        var sun = SkyRings.Direction(zenith + 0.7, 100);
        var light = geometry.Solve([LightCases.Sun(sun, 731)], new Optics(), 1);
        var through = 731 * OddScenes.Rise(sun, geometry.Scene.Cell);
        foreach (var budget in light.ParBudgets.Concat(light.NirBudgets))
        {
            Assert.Equal(through, budget.IncidentDirect, 1e-6 * through);
            Assert.InRange(budget.Closure, 0, 1e-5);
            Assert.True(budget.AbsorbedLeaves > 0);
        }
    }

    [Fact]
    public void Threads_cast_the_same_shadows()
    {
        IncidentLight[] hours = [.. Enumerable.Range(0, 9).Select(hour => LightCases.Sun(SkyRings.Direction(80 - (8 * hour), 40 * hour)))];
        var one = Geometry(1).Solve(hours, LightCases.Black, 1);
        foreach (var threads in (int[])[2, 5])
        {
            var many = Geometry(1).Solve(hours, LightCases.Black, threads);
            Assert.Equal(one.SunlitShare, many.SunlitShare);
            Assert.Equal(one.GroundSunlitFraction, many.GroundSunlitFraction);
            Assert.Equal(one.AbsorbedParDirect, many.AbsorbedParDirect);
        }
    }

    private static LightGeometry Geometry(double angle, double riseAcross = 0, double riseAlong = 0) => LightGeometry.Build(
        RandomScenes.Hedge(60, 5, new Cell(1, 0.8, riseAcross, riseAlong)), Sky, LightCases.Quality(0.03, 0.006) with { SunAngle = angle }, 1);
}
