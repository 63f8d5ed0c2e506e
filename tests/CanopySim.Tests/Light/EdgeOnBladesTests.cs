using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>Blades that the sun sees edge on: their height changes by metres from pixel to pixel, and it must stay theirs.</summary>
public class EdgeOnBladesTests
{
    private const int Blades = 3_000;
    private const double Pixel = 0.01;

    [Theory]
    [InlineData(20)]
    [InlineData(50)]
    [InlineData(75)]
    public void Blades_edge_on_do_not_show_through_a_leaf_above_them(double zenith)
    {
        var sun = SkyRings.Direction(zenith, 0);
        var roof = SunCounts.Of(Scene(sun, blades: 0), sun, Pixel).Pixels[0];
        var counts = SunCounts.Of(Scene(sun, Blades), sun, Pixel).Pixels;
        Assert.Equal(roof, counts[0]);
        Assert.True(counts[2..^1].Sum() > 100, "no blade was drawn");
    }

    [Fact]
    public void Links_reach_them_from_the_leaf_above_alone()
    {
        // The roof covers the cell: no line comes down from the sky beside it.
        var sun = SkyRings.Direction(50, 0);
        var geometry = LightGeometry.Build(Scene(sun, Blades, roofShare: 1), [sun], LightCases.Quality(Pixel, 1), 1);
        for (var face = 2; face < geometry.Nodes.FirstGround; face++) Assert.Equal(0, geometry.Matrix.SkyLinksOfNode[face]);
    }

    // Under a horizontal roof. Their plane holds the sun's direction but for rounding, and the column of a pixel's sample point, so
    // that rounding as well decides which pixels they cover.
    private static Scene Scene(Vector3 sun, int blades, double roofShare = 0.7)
    {
        var cell = new Cell(1, 1);
        var grid = ProjectedGrid.For(cell, sun, Pixel);
        var scenes = new RandomScenes(cell);
        var (size, high) = ((float)Math.Sqrt(roofShare), new Vector3(0.1f, 0.1f, 0.8f));
        scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), high, new Vector3(size, 0, 0), new Vector3(0, size, 0));
        for (var blade = 0; blade < blades; blade++)
        {
            double Value(string purpose) => SeededValue.Uniform(71, purpose, blade);
            var column = (int)(grid.Width * Value("column"));
            Vector3 At(double y, double z) => new((float)(((column + 0.5) / grid.ColumnsPerMeter) + (z * grid.ShiftAcross)), (float)y, (float)z);
            var (surface, y, z) = (scenes.AddSurface(SurfaceKind.Blade), Value("y"), 0.1 + (0.4 * Value("z")));
            var (a, b, c, d) = (At(y, z), At(y + 0.05, z), At(y + 0.05 + (0.02 * Value("skew")), z + 0.1), At(y, z + 0.1));
            scenes.AddTriangle(surface, a, b, c);
            scenes.AddTriangle(surface, a, c, d);
        }

        return scenes.Build();
    }
}
