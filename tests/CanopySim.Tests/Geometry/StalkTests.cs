using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Sky;
using Xunit;

namespace CanopySim.Tests.Geometry;

/// <summary>
/// What stands for a round stalk must shadow as much as it: a cylinder's mean shadow over all directions is a quarter
/// of its side, π r L / 2.
/// </summary>
public class StalkTests
{
    private const float Radius = 0.0015f;
    private static readonly Vector3 From = new(0.1f, 0.2f, 0.3f);
    private static readonly Vector3 To = new(0.15f, 0.16f, 0.37f);

    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    public void A_tube_shadows_as_the_round_one(int sides)
    {
        // Each line through a convex body meets two sides of it.
        Assert.Equal(1, MeanShadow(list => list.AddTube(From, To, Radius, Radius, sides)) / 2, 0.02);
    }

    [Fact]
    public void Strips_turned_all_ways_shadow_as_the_round_one()
    {
        const int Turns = 16;
        var sum = 0.0;
        for (var turn = 0; turn < Turns; turn++)
        {
            var angle = MathF.PI * turn / Turns;
            sum += MeanShadow(list => list.AddStrip(From, To, Radius, angle));
        }

        Assert.Equal(1, sum / Turns, 0.01);
    }

    [Fact]
    public void A_strip_is_flat_and_as_long_as_its_stalk()
    {
        var list = new TriangleList();
        list.Begin(SurfaceKind.Stalk);
        list.AddStrip(From, To, Radius, 0.7f);
        var scene = list.Build(new Cell(2, 1));
        Assert.Equal(2, scene.TriangleCount);
        Assert.Equal(Math.PI * Radius * (To - From).Length(), scene.SurfaceAreas()[0], 1e-8);
    }

    [Fact]
    public void A_stalk_without_length_is_nothing()
    {
        var list = new TriangleList();
        list.Begin(SurfaceKind.Stalk);
        list.AddStrip(From, From, Radius, 0);
        list.AddTube(From, From, Radius, Radius, 3);
        Assert.Equal(0, list.Build(new Cell(2, 1)).TriangleCount);
    }

    // Mean over directions of all triangles' projected areas, over that of the cylinder.
    private static double MeanShadow(Action<TriangleList> add)
    {
        const int Directions = 2000;
        var list = new TriangleList();
        list.Begin(SurfaceKind.Stalk);
        add(list);
        var scene = list.Build(new Cell(2, 1));
        var even = SkyDirections.Create(Directions);
        var sum = 0.0;
        for (var i = 0; i < Directions; i++)
        {
            var direction = new Vector3((float)even.X(i), (float)even.Y(i), (float)even.Z(i));
            foreach (var corners in scene.Corners.Chunk(3))
                sum += 0.5 * Math.Abs(Vector3.Dot(Vector3.Cross(corners[1] - corners[0], corners[2] - corners[0]), direction));
        }

        return sum / Directions / (0.5 * Math.PI * Radius * (To - From).Length());
    }
}
