using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Views;
using Xunit;

namespace CanopySim.Tests.Views;

/// <summary>
/// Pictures of scenes whose answer is seen by eye: what stands where, what hides what, and where it repeats.
/// </summary>
public class CanopyViewTests
{
    private const double Pixel = 0.005;

    private static readonly Cell Cell = new(2.4, 1.5);

    // A small blade on the right of the row before a large one on the left, a level one above them on the right, one
    // across the row on the left.
    private const int Small = 0;
    private const int Large = 1;
    private const int Level = 2;
    private const int Across = 3;

    private static Scene Scene(Cell cell)
    {
        var triangles = new TriangleList();
        Add(new Vector3(0.2f, 0.2f, 1.0f), 0.2f * Vector3.UnitY, 0.2f * Vector3.UnitZ);
        Add(new Vector3(-0.2f, 0.1f, 0.9f), 0.4f * Vector3.UnitY, 0.4f * Vector3.UnitZ);
        Add(new Vector3(0.5f, 0.6f, 1.5f), 0.2f * Vector3.UnitX, 0.2f * Vector3.UnitY);
        Add(new Vector3(-0.6f, 0.3f, 0.5f), 0.2f * Vector3.UnitX, 0.2f * Vector3.UnitZ);
        return triangles.Build(cell);

        void Add(Vector3 corner, Vector3 side, Vector3 other)
        {
            // What stands on a slope is lifted with it.
            corner += (float)((cell.RiseAcross * corner.X) + (cell.RiseAlong * corner.Y)) * Vector3.UnitZ;
            side += (float)((cell.RiseAcross * side.X) + (cell.RiseAlong * side.Y)) * Vector3.UnitZ;
            other += (float)((cell.RiseAcross * other.X) + (cell.RiseAlong * other.Y)) * Vector3.UnitZ;
            triangles.Begin(SurfaceKind.Blade);
            triangles.Add(corner, corner + side, corner + side + other);
            triangles.Add(corner, corner + side + other, corner + other);
        }
    }

    [Theory]
    [InlineData(ViewSide.Front, 0.3, 1.1, Small)]
    [InlineData(ViewSide.Front, 0.15, 1.1, Large)]
    [InlineData(ViewSide.Front, 0.45, 1.25, Large)]
    [InlineData(ViewSide.Front, 0.55, 1.1, -1)]
    [InlineData(ViewSide.Front, 0.3, 1.1 + 0.25, -1)]
    [InlineData(ViewSide.Front, 0.3 + 1.5, 1.1, Small)]
    [InlineData(ViewSide.Front, 0.15 - 3.0, 1.1, Large)]
    [InlineData(ViewSide.Front, 0.7, 5, -1)]
    [InlineData(ViewSide.Front, 0.7, -0.5, -1)]
    [InlineData(ViewSide.Along, -0.5, 0.6, Across)]
    [InlineData(ViewSide.Along, 0.5, 0.6, -1)]
    [InlineData(ViewSide.Along, -0.5 + 2.4, 0.6, Across)]
    [InlineData(ViewSide.Above, 0.7, -0.6, Level)]
    [InlineData(ViewSide.Above, 0.7, 0.6, -1)]
    [InlineData(ViewSide.Above, 0.7 + 1.5, -0.6 + 2.4, Level)]
    public void What_is_seen_at_a_place(ViewSide side, double right, double up, int surface)
    {
        Assert.Equal(surface, CanopyView.Of(Scene(Cell), side, Pixel).SurfaceAt(right, up, out _));
        // Heights are those over the ground: on a slope the picture is the same.
        Assert.Equal(surface, CanopyView.Of(Scene(Cell with { RiseAcross = 0.2, RiseAlong = -0.1 }), side, Pixel)
            .SurfaceAt(right, up, out _));
    }

    [Fact]
    public void Edges_stand_where_they_are_to_a_pixel()
    {
        var view = CanopyView.Of(Scene(Cell), ViewSide.Front, Pixel);
        var widths = Enumerable.Range(0, 1500).Count(i => view.SurfaceAt(0.001 * i, 1.1, out _) == Small);
        var heights = Enumerable.Range(0, 2000).Count(i => view.SurfaceAt(0.3, 0.001 * i, out _) == Small);
        Assert.InRange(widths, 200 - 10, 200 + 10);
        Assert.InRange(heights, 200 - 10, 200 + 10);
    }

    [Fact]
    public void What_faces_the_lamp_is_brighter()
    {
        var front = CanopyView.Of(Scene(Cell), ViewSide.Front, Pixel);
        var above = CanopyView.Of(Scene(Cell), ViewSide.Above, Pixel);
        front.SurfaceAt(0.3, 1.1, out var facing);
        above.SurfaceAt(0.7, -0.6, out var level);
        Assert.InRange(facing, 0.8, 1);
        Assert.Equal(facing, level, 5);
        // A blade that looks away from the lamp.
        var triangles = new TriangleList();
        triangles.Begin(SurfaceKind.Blade);
        triangles.Add(new Vector3(0.1f, 0.2f, 0.2f), new Vector3(0.6f, 0.2f, 1f), new Vector3(0.6f, 1f, 1f));
        CanopyView.Of(triangles.Build(Cell), ViewSide.Front, Pixel).SurfaceAt(0.3, 0.85, out var turned);
        Assert.InRange(turned, 0.1, facing - 0.05);
    }

    [Fact]
    public void A_width_of_nothing_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CanopyView.Of(Scene(Cell), ViewSide.Front, 0));

    [Fact]
    public void A_scene_without_triangles_is_an_empty_picture() =>
        Assert.Equal(-1, CanopyView.Of(new TriangleList().Build(Cell), ViewSide.Along, Pixel).SurfaceAt(0, 1, out _));
}
