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

    [Theory]
    [InlineData(0)]
    [InlineData(50)]
    [InlineData(75)]
    public void Blades_edge_on_do_not_show_through_a_leaf_above_them(double zenith)
    {
        var sun = SkyRings.Direction(zenith, 35);
        var roof = SunCounts.Of(Scene(sun, blades: 0), sun, 0.01).Pixels[0];
        var counts = SunCounts.Of(Scene(sun, Blades), sun, 0.01).Pixels;
        Assert.Equal(roof, counts[0]);
        Assert.InRange(counts[2..^1].Sum(), 1, counts[^1]);
    }

    [Fact]
    public void Links_reach_them_from_the_leaf_above_alone()
    {
        // The roof covers the cell: no line comes down from the sky beside it.
        var geometry = LightGeometry.Build(Scene(Vector3.UnitZ, Blades, roofShare: 1), [Vector3.UnitZ], LightCases.Quality(0.01, 1), 1);
        for (var face = 2; face < geometry.Nodes.FirstGround; face++) Assert.Equal(0, geometry.Matrix.SkyLinksOfNode[face]);
    }

    // Tilted out of the sun's direction by 10⁻² to 10⁻⁷ of their length, under a horizontal roof.
    private static Scene Scene(Vector3 sun, int blades, double roofShare = 0.7)
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        var (size, high) = ((float)Math.Sqrt(roofShare), new Vector3(0.1f, 0.1f, 0.8f));
        scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), high, new Vector3(size, 0, 0), new Vector3(0, size, 0));
        for (var blade = 0; blade < blades; blade++)
        {
            double Value(string purpose) => SeededValue.Uniform(71, purpose, blade);
            var (sine, cosine) = Math.SinCos(2 * Math.PI * Value("azimuth"));
            var along = new Vector3((float)(0.05 * cosine), (float)(0.05 * sine), 0);
            var aside = new Vector3((float)-sine, (float)cosine, 0) * (float)(Math.Pow(10, -2 - (5 * Value("tilt"))) * (blade % 2 == 0 ? 1 : -1));
            var corner = new Vector3((float)Value("x"), (float)Value("y"), (float)(0.1 + (0.4 * Value("z"))));
            scenes.AddQuad(scenes.AddSurface(SurfaceKind.Blade), corner, along, (0.1f / sun.Z * sun) + (0.1f * aside));
        }

        return scenes.Build();
    }
}
