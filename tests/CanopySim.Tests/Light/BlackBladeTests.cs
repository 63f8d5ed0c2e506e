using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>One or two black blades, where geometry alone gives the answer.</summary>
public class BlackBladeTests
{
    private const float Side = 0.3f;

    // A pixel grid that the blade's edges fit counts it exactly; 6 mm fits 0.3 m and the cell of 1.2 m.
    private const double Pixel = 0.006;

    [Fact]
    public void A_horizontal_blade_under_the_zenith_sun_takes_its_area()
    {
        var light = LightCases.SunOnly(Blades(1), Vector3.UnitZ, Pixel);
        Assert.Equal(Side * Side, light.AbsorbedParDirect[0], 1e-6);
        Assert.Equal(Side * Side, light.AbsorbedPar[0], 1e-6);
        Assert.Equal(1, light.SunlitShare[0], 12);
        Assert.Equal(1 - (Side * Side / 1.44), light.GroundSunlitFraction[0], 1e-6);
    }

    [Fact]
    public void A_blade_that_faces_down_takes_as_much()
    {
        var scenes = new RandomScenes(new Cell(1.2, 1.2));
        scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), new Vector3(0.3f, 0.3f, 1), new Vector3(0, Side, 0), new Vector3(Side, 0, 0));
        Assert.Equal(Side * Side, LightCases.SunOnly(scenes.Build(), Vector3.UnitZ, Pixel).AbsorbedPar[0], 1e-6);
    }

    [Fact]
    public void The_upper_of_two_blades_shades_the_lower()
    {
        var light = LightCases.SunOnly(Blades(2), Vector3.UnitZ, Pixel);
        Assert.Equal([1.0, 0.0], light.SunlitShare);
        Assert.Equal(0, light.AbsorbedPar[1]);
    }

    // At 45° along x the shadow moves by the height between the blades, 0.15 m: half of the lower blade.
    [Fact]
    public void A_slanting_sun_lights_half_of_the_lower_blade()
    {
        var light = LightCases.SunOnly(Blades(2), SkyRings.Direction(45, 0), 0.002);
        Assert.Equal(0.5, light.SunlitShare[1], 0.002 / Side);

        // The blade's edges run along the pixels, so a whole column of 2.8 mm may be in or out.
        Assert.Equal(Side * Side * Math.Sqrt(0.5), light.AbsorbedPar[0], Side * 0.002);
    }

    // A blade with nothing above receives the whole diffuse irradiance whatever the sky's radiance.
    [Fact]
    public void A_horizontal_blade_under_any_sky_takes_the_diffuse_irradiance()
    {
        var directions = SkyRings.Spiral(145);

        // Turned against the pixels: edges along them would gain or lose whole rows (measured: 4e-3 of the blade, turned 2e-5).
        var scenes = new RandomScenes(new Cell(1.2, 1.2));
        var (along, aside) = (Side * new Vector3(0.8f, 0.6f, 0), Side * new Vector3(-0.6f, 0.8f, 0));
        scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), new Vector3(0.5f, 0.3f, 1), along, aside);
        var geometry = LightGeometry.Build(scenes.Build(), directions, LightCases.Quality(Pixel, Pixel), 1);
        double[] slanted = [.. directions.Select(direction => 1 + direction.Z + (0.5 * direction.X))];
        var light = geometry.Solve(
            [LightCases.UniformSky(), LightCases.UniformSky() with { SkyRadiance = slanted }], LightCases.Black, 1);
        for (var hour = 0; hour < 2; hour++)
        {
            Assert.Equal(Side * Side, light.AbsorbedPar[hour], 1e-3 * Side * Side);
            Assert.Equal(1, light.ParBudgets[hour].IncidentDiffuse, 1e-12);
            Assert.Equal(0, light.ParBudgets[hour].Reflected);
        }

        Assert.Equal(1 - (Side * Side / 1.44), geometry.SkyGapFraction, 1e-4);
    }

    // A vertical blade sees half the sky with each side: (1/2 + 1/2) of the horizontal irradiance on its area. Its copies
    // hide the horizon: 1 % at 10 m, where they make a leaf area index of 0.01, below 0.1 % at 40 m.
    [Fact]
    public void A_vertical_blade_in_the_open_takes_half_the_sky_on_each_side()
    {
        var scenes = new RandomScenes(new Cell(40, 40));
        scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), new Vector3(6, 6, 0.5f), new Vector3(0.6f, 0.8f, 0), new Vector3(0, 0, 1));
        var geometry = LightGeometry.Build(scenes.Build(), SkyRings.Spiral(300), LightCases.Quality(0.08, 0.08), 2);
        var light = geometry.Solve([LightCases.UniformSky()], LightCases.Black, 2);
        Assert.Equal(1, light.AbsorbedPar[0], 0.01);
    }

    [Fact]
    public void A_cell_without_plants_gives_all_light_to_the_ground()
    {
        var scene = new RandomScenes(new Cell(2, 1)).Build();
        var light = LightGeometry.Build(scene, SkyRings.Spiral(20), LightCases.Quality(0.02, 0.02), 2).Solve(
            [LightCases.UniformSky(3) with { SunDirection = SkyRings.Direction(60, 20), DirectNormalPar = 4 }, new IncidentLight()],
            LightCases.Uniform(0, 0, 0, 0.25),
            2);
        Assert.Equal(1, light.GroundSunlitFraction[0], 12);
        Assert.Equal(1, light.SkyGapFraction, 12);
        Assert.Equal(5 * 0.75, light.ParBudgets[0].AbsorbedGround, 1e-5);
        Assert.Equal(5 * 0.25, light.ParBudgets[0].Reflected, 1e-5);
        Assert.Equal(default, light.ParBudgets[1]);
    }

    private static Scene Blades(int count)
    {
        var scenes = new RandomScenes(new Cell(1.2, 1.2));
        for (var blade = 0; blade < count; blade++)
        {
            var corner = new Vector3(0.3f, 0.3f, 1 - (0.15f * blade));
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), corner, new Vector3(Side, 0, 0), new Vector3(0, Side, 0));
        }

        return scenes.Build();
    }
}
