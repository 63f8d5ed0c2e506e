using CanopySim.Light;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>The raster and the links against <see cref="RasterTwin"/>: equal counts on any scene, sun and pixel.</summary>
public class RasterTwinTests
{
    private static readonly Gen<(int Number, int Turn, double Pixel)> Any = Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 1000], Gen.Double[0.003, 0.05]);

    [Fact]
    public void The_sun_sees_the_same_pixels_of_every_face() =>
        Any.Sample(any =>
        {
            var scene = OddScenes.Of(any.Number);
            var sun = OddScenes.Sun(any.Number, scene.Cell, any.Turn);
            Assert.Equal(RasterTwin.SunPixels(scene, sun, any.Pixel), SunCounts.Of(scene, sun, any.Pixel).Pixels);
        }, iter: 300, threads: 1);

    [Fact]
    public void Faces_meet_each_other_equally_often() =>
        Any.Sample(any =>
        {
            var scene = OddScenes.Of(any.Number);
            var directions = SkyRings.Spiral(12);
            var geometry = LightGeometry.Build(scene, directions, LightCases.Quality(2 * any.Pixel, 0.1), 1);
            Assert.Equal(LinksByTwin(geometry, directions, 2 * any.Pixel), LinkCounts.Of(geometry));
        }, iter: 100, threads: 1);

    private static SortedDictionary<(int, int), long> LinksByTwin(LightGeometry geometry, System.Numerics.Vector3[] directions, double pixel)
    {
        var (nodes, links) = (geometry.Nodes, new SortedDictionary<(int, int), long>());
        foreach (var direction in LinkDirection.All(geometry.Scene.Cell, directions, pixel))
        {
            var grid = ProjectedGrid.For(geometry.Scene.Cell, direction.Upwards, pixel);
            var columns = new List<RasterTwin.Fragment>[grid.PixelCount];
            for (var at = 0; at < columns.Length; at++) columns[at] = [];
            foreach (var fragment in RasterTwin.Draw(geometry.Scene, grid, direction.ColumnOffset, direction.RowOffset)) columns[fragment.Pixel].Add(fragment);
            for (var at = 0; at < columns.Length; at++)
            {
                // From the sky down; of two at one height the face of the greater number first.
                var above = LinkCounts.Sky(direction.Index);
                foreach (var (_, _, face) in columns[at].OrderByDescending(fragment => fragment.Height).ThenByDescending(fragment => fragment.Face))
                {
                    Count(above, face);
                    above = face ^ 1;
                }

                Count(above, nodes.FirstGround + Math.Min(nodes.GroundStrips - 1, (int)(((at % grid.Width) + direction.ColumnOffset) * nodes.GroundStrips / grid.Width)));
            }
        }

        return links;

        // The inside of a closed body sends nothing.
        void Count(int a, int b)
        {
            if (a < 0 || !nodes.IsInside(a)) links[(b, a)] = links.GetValueOrDefault((b, a)) + 1;
            if (a >= 0 && !nodes.IsInside(b)) links[(a, b)] = links.GetValueOrDefault((a, b)) + 1;
        }
    }
}
