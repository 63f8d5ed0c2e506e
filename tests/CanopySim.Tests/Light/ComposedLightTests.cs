using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>Hours that are put together from a sky in pieces and suns by themselves, against the same hours solved at once.</summary>
public class ComposedLightTests
{
    private static readonly Vector3[] Sky = SkyRings.Spiral(30);
    private static readonly Vector3 Sun = SkyRings.Direction(40, 100);

    // Light adds up: with a sky that is even within each piece nothing is left but the solver's tolerance and single precision.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.3, -0.1)]
    public void Parts_add_up_to_the_whole(double riseAcross, double riseAlong)
    {
        IncidentLight[] hours =
        [
            LightCases.Sun(Sun, 700),
            LightCases.UniformSky(120),
            new() { SunDirection = SkyRings.Direction(70, 220), DirectNormalPar = 300, DirectNormalNir = 410, DiffuseHorizontalPar = 80, DiffuseHorizontalNir = 35 },
        ];
        var geometry = Geometry(riseAcross, riseAlong);
        var whole = geometry.Solve(hours, new Optics(), 1);
        var parts = new ComposedLight(geometry, new Optics(), 1).Solve(hours);
        Assert.Equal(whole.SunlitShare, parts.SunlitShare);
        Assert.Equal(whole.GroundSunlitFraction, parts.GroundSunlitFraction);
        Near(whole.AbsorbedPar, parts.AbsorbedPar);
        Near(whole.AbsorbedNir, parts.AbsorbedNir);
        Near(whole.AbsorbedParDirect, parts.AbsorbedParDirect);
        for (var hour = 0; hour < hours.Length; hour++)
        {
            Near(Terms(whole.ParBudgets[hour]), Terms(parts.ParBudgets[hour]));
            Near(Terms(whole.NirBudgets[hour]), Terms(parts.NirBudgets[hour]));
        }
    }

    [Fact]
    public void A_near_sun_lends_its_light_and_the_hour_brings_its_power()
    {
        var geometry = Geometry(0, 0);
        var light = new ComposedLight(geometry, new Optics(), 1);
        var first = light.Solve([LightCases.Sun(Sun, 500)]);
        var other = SkyRings.Direction(41.5, 100);
        var second = light.Solve([LightCases.Sun(other, 500)]);
        var ratio = other.Z / Sun.Z;
        Assert.Equal(first.SunlitShare, second.SunlitShare);
        Near([.. first.AbsorbedPar.Select(power => power * ratio)], second.AbsorbedPar);
        Assert.NotEqual(first.SunlitShare, light.Solve([LightCases.Sun(SkyRings.Direction(43, 100), 500)]).SunlitShare);
    }

    [Fact]
    public void Threads_change_no_bit()
    {
        IncidentLight[] hours = [.. Enumerable.Range(0, 9).Select(hour => LightCases.Sun(SkyRings.Direction(80 - (8 * hour), 40 * hour)) with { DiffuseHorizontalPar = 1 + hour })];
        var one = new ComposedLight(Geometry(0, 0), new Optics(), 1).Solve(hours);
        var many = new ComposedLight(Geometry(0, 0), new Optics(), 3).Solve(hours);
        Assert.Equal(one.AbsorbedPar, many.AbsorbedPar);
        Assert.Equal(one.AbsorbedNir, many.AbsorbedNir);
    }

    private static double[] Terms(LightBudget of) =>
        [of.IncidentDirect, of.IncidentDiffuse, of.AbsorbedLeaves, of.AbsorbedWood, of.AbsorbedClusters, of.AbsorbedGround, of.Reflected];

    private static void Near(double[] expected, double[] found)
    {
        const double Rounding = 2e-5;
        var largest = expected.Max();
        Assert.Equal(expected.Length, found.Length);
        for (var i = 0; i < found.Length; i++) Assert.Equal(expected[i], found[i], Rounding * largest);
    }

    private static LightGeometry Geometry(double riseAcross, double riseAlong) => LightGeometry.Build(
        RandomScenes.Hedge(60, 5, new Cell(1, 0.8, riseAcross, riseAlong)), Sky,
        LightCases.Quality(0.03, 0.006) with { SunAngle = 2, IsComposed = true }, 1);
}
