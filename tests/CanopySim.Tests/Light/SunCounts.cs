using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;

namespace CanopySim.Tests.Light;

/// <summary>Pixels in which the sun sees each face: 2 surface + side (0 upper or outer, 1 lower), and the ground last.</summary>
internal sealed record SunCounts(long[] Pixels, double[] SunlitShares)
{
    public static SunCounts Of(Scene scene, Vector3 sun, double pixel)
    {
        var nodes = new LightNodes(scene, 12, 1);
        var raster = SunRaster.Draw(scene, new LightMesh(scene), nodes, sun, pixel, new SunRaster.Scratch());
        var power = ProjectedGrid.For(scene.Cell, sun, pixel).PixelPower;
        var pixels = new long[nodes.FirstGround + 1];
        for (var node = 0; node < nodes.Count; node++)
        {
            var count = raster.PowerOfNode[node] / power;
            Xunit.Assert.Equal(Math.Round(count), count, 1e-6);
            pixels[Math.Min(node, nodes.FirstGround)] += (long)Math.Round(count);
        }

        return new SunCounts(pixels, raster.SunlitShares);
    }
}
