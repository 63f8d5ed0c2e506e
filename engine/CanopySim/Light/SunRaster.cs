using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// What the sun sees of the scene: each pixel keeps its highest triangle. The key is height above triangle number, so the
/// largest key wins whatever the order of drawing. (A float that is not negative orders like its bits.)
/// </summary>
internal sealed class SunRaster
{
    private SunRaster(double vertical, int nodeCount, int triangleCount)
    {
        Vertical = vertical;
        PowerOfNode = new double[nodeCount];
        VisibleOfTriangle = new int[triangleCount];
        PixelsOfTriangle = new int[triangleCount];
    }

    /// <summary>Irradiance through the cell per normal irradiance.</summary>
    public double Vertical { get; }

    /// <summary>Power that each face or ground strip receives per normal irradiance [m²].</summary>
    public double[] PowerOfNode { get; }

    public int[] VisibleOfTriangle { get; }

    public int[] PixelsOfTriangle { get; }

    public double GroundSunlitFraction { get; private set; }

    public static SunRaster Draw(Scene scene, LightMesh mesh, LightNodes nodes, Vector3 direction, double pixel)
    {
        var grid = ProjectedGrid.For(scene.Cell, direction, pixel);
        var raster = new SunRaster(grid.Vertical, nodes.Count, scene.TriangleCount);
        var runs = new HighestRuns(new ulong[grid.PixelCount], raster.PixelsOfTriangle, mesh.Triangles, new bool[scene.TriangleCount]);
        new TriangleRaster().Draw(mesh, grid, 0.5f, 0.5f, runs);

        var groundPixels = new int[nodes.GroundStrips];
        var stripOfColumn = nodes.StripsOfColumns(grid.Width, 0.5f);
        for (var row = 0; row < grid.Height; row++)
        {
            var keys = runs.Keys.AsSpan(row * grid.Width, grid.Width);
            for (var column = 0; column < keys.Length; column++)
            {
                if (keys[column] == 0) groundPixels[stripOfColumn[column]]++;
                else raster.VisibleOfTriangle[(uint)keys[column] - 1]++;
            }
        }

        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            var side = runs.UpperSeesLight[triangle] ? 0 : 1;
            raster.PowerOfNode[(2 * scene.SurfaceOfTriangle[triangle]) + side] += raster.VisibleOfTriangle[triangle] * grid.PixelPower;
        }

        for (var strip = 0; strip < groundPixels.Length; strip++)
            raster.PowerOfNode[nodes.FirstGround + strip] = groundPixels[strip] * grid.PixelPower;
        // Pixels are added before the division: twelve shares would make a hair more than 1 of bare ground.
        raster.GroundSunlitFraction = groundPixels.Sum() / (double)grid.PixelCount;
        return raster;
    }

    /// <summary>
    /// Sunlit share of each surface: visible part of each triangle, weighted with the triangle's true area. A triangle too small
    /// or too steep for any pixel takes the share of the rest of its surface.
    /// </summary>
    public void SunlitShares(Scene scene, Span<double> shares)
    {
        var sampled = new double[scene.SurfaceCount];
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            if (PixelsOfTriangle[triangle] == 0) continue;
            var (surface, area) = (scene.SurfaceOfTriangle[triangle], scene.TriangleArea(triangle));
            sampled[surface] += area;
            // The share first, so that a surface in full sun has all of its area and not a hair more.
            shares[surface] += area * (VisibleOfTriangle[triangle] / (double)PixelsOfTriangle[triangle]);
        }

        for (var surface = 0; surface < shares.Length; surface++)
        {
            if (sampled[surface] > 0) shares[surface] /= sampled[surface];
        }
    }

    private readonly struct HighestRuns(ulong[] keys, int[] pixelsOfTriangle, int[] triangles, bool[] upperSeesLight) : IPixelRuns
    {
        public ulong[] Keys { get; } = keys;

        public bool[] UpperSeesLight { get; } = upperSeesLight;

        public void Add(ReadOnlySpan<PixelRun> runs)
        {
            foreach (ref readonly var run in runs)
            {
                // Numbers start at 1: key 0 is bare ground.
                var triangle = triangles[run.Place];
                UpperSeesLight[triangle] = run.UpperSeesLight == 1;
                var pixels = Keys.AsSpan(run.Pixel, run.Count);
                var drawn = 0;
                for (var i = 0; i < pixels.Length; i++)
                {
                    var z = Math.Min(Math.Max(run.Height + (i * run.Slope), run.Lowest), run.Highest);
                    if (z < 0) continue;
                    drawn++;
                    pixels[i] = Math.Max(pixels[i], ((ulong)BitConverter.SingleToUInt32Bits(z + 0f) << 32) | ((uint)triangle + 1));
                }

                pixelsOfTriangle[triangle] += drawn;
            }
        }
    }
}
