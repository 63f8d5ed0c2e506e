using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using Xunit;

namespace CanopySim.Tests.Light;

public class SlopeTests
{
    // A block on a slope of tan 20° across its rows, turned back by 20° about them, is a flat block under a turned sun. Black
    // ground and leaves that scatter: what the sun brings to each leaf must be the same, however it is projected.
    [Fact]
    public void A_sloped_block_is_a_flat_block_under_a_turned_sun()
    {
        const double Angle = 20 * Math.PI / 180;
        var flatCell = new Cell(1, 0.8);
        var flat = RandomScenes.Hedge(60, 8, flatCell, hedgeWidth: 1.1f);
        Vector3 Turn(Vector3 v) => new(
            (float)((v.X * Math.Cos(Angle)) - (v.Z * Math.Sin(Angle))), v.Y, (float)((v.X * Math.Sin(Angle)) + (v.Z * Math.Cos(Angle))));
        var sloped = new Scene
        {
            Cell = new Cell(Math.Cos(Angle), 0.8, RiseAcross: Math.Tan(Angle)),
            Corners = Array.ConvertAll(flat.Corners, Turn),
            SurfaceOfTriangle = flat.SurfaceOfTriangle,
            Kinds = flat.Kinds,
            LeafIds = flat.LeafIds,
        };
        var flatSun = SkyRings.Direction(35, 110);
        var quality = LightCases.Quality(0.006, 0.003);
        var onFlat = LightGeometry.Build(flat, SkyRings.Spiral(500), quality, 2).Solve([LightCases.Sun(flatSun, 100)], new Optics(), 2);
        var onSlope = LightGeometry.Build(sloped, SkyRings.Spiral(500), quality, 2).Solve([LightCases.Sun(Turn(flatSun), 100)], new Optics(), 2);

        // Budgets are per horizontal ground: the flat cell lies on more of it.
        var ground = sloped.Cell.GroundArea / flatCell.GroundArea;
        Assert.Equal(onFlat.ParBudgets[0].IncidentDirect, onSlope.ParBudgets[0].IncidentDirect * ground, 1e-3);
        Assert.Equal(onFlat.GroundSunlitFraction[0], onSlope.GroundSunlitFraction[0], 0.003);
        Assert.Equal(onFlat.NirBudgets[0].AbsorbedLeaves, onSlope.NirBudgets[0].AbsorbedLeaves * ground, 0.005 * onFlat.NirBudgets[0].AbsorbedLeaves);
        Assert.Equal(onFlat.NirBudgets[0].Reflected, onSlope.NirBudgets[0].Reflected * ground, 0.01 * onFlat.NirBudgets[0].Reflected);
        var (difference, mean) = (0.0, 0.0);
        for (var leaf = 0; leaf < 60; leaf++)
        {
            difference += Math.Pow(onFlat.AbsorbedPar[leaf] - onSlope.AbsorbedPar[leaf], 2) / 60;
            mean += onFlat.AbsorbedPar[leaf] / 60;
        }

        // Both sample the same suns with pixels of 3 mm: 1 % a leaf each.
        Assert.InRange(Math.Sqrt(difference) / mean, 0, 0.02);
    }

    // A horizontal plane sees the whole sky; the slope of angle β loses the share (1 − cos β) / 2 to the hillside and has
    // 1 / cos β more ground than its map: its uniform sky brings (1 + cos β) / (2 cos β) per horizontal area.
    [Fact]
    public void The_hillside_hides_its_part_of_the_sky()
    {
        var cosine = 1 / Math.Sqrt(1 + 0.09 + 0.01);
        var scene = new RandomScenes(new Cell(1, 1, 0.3, 0.1)).Build();
        var light = LightGeometry.Build(scene, SkyRings.Spiral(3000), LightCases.Quality(0.02, 0.02), 2)
            .Solve([LightCases.UniformSky(100)], LightCases.Black, 2);
        Assert.Equal(100 * (1 + cosine) / 2 / cosine, light.ParBudgets[0].IncidentDiffuse, 0.1);
        Assert.Equal(light.ParBudgets[0].IncidentDiffuse, light.ParBudgets[0].AbsorbedGround, 1e-3);
    }
}
