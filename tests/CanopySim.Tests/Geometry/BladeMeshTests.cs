using System.Numerics;
using CanopySim.Geometry;
using Xunit;

namespace CanopySim.Tests.Geometry;

public class BladeMeshTests
{
    public static TheoryData<bool> Meshes => [true, false];

    [Fact]
    public void Drawn_blades_have_fourteen_triangles_and_those_for_light_twelve()
    {
        Assert.Equal(14, BladeMesh.Drawn.TriangleCount);
        Assert.Equal(12, BladeMesh.ForLight.TriangleCount);
    }

    [Theory]
    [MemberData(nameof(Meshes))]
    public void Area_is_one(bool drawn) => Assert.Equal(1, Triangles(drawn).Sum(Area), 1e-5);

    [Theory]
    [MemberData(nameof(Meshes))]
    public void No_triangle_is_degenerate_and_all_show_their_upper_side(bool drawn)
    {
        foreach (var triangle in Triangles(drawn))
        {
            Assert.True(Area(triangle) > 1e-3);
            Assert.True(Normal(triangle).Z > 0);
        }
    }

    // The engine folds each half by 0.26 rad, assumed: the halves' normals stand 0.52 rad apart, leaning to the midrib.
    [Theory]
    [MemberData(nameof(Meshes))]
    public void Halves_are_folded_up_along_the_midrib(bool drawn)
    {
        foreach (var triangle in Triangles(drawn))
        {
            var normal = Vector3.Normalize(Normal(triangle));
            var right = (triangle[0].X + triangle[1].X + triangle[2].X) > 0;
            Assert.Equal(0.26, MathF.Acos(normal.Z), 1e-3);
            Assert.Equal(right ? -1 : 1, MathF.Sign(normal.X));
            Assert.Equal(0, normal.Y, 1e-5);
        }
    }

    [Theory]
    [MemberData(nameof(Meshes))]
    public void Is_the_same_on_both_sides(bool drawn)
    {
        var right = Triangles(drawn).Where(triangle => triangle.Sum(corner => corner.X) > 0).Sum(Area);
        Assert.Equal(0.5, right, 1e-5);
    }

    // Light counts on it: three facets of up to five corners to each half, and no corner of the outline left out.
    [Fact]
    public void Light_sees_the_outline_as_drawn_in_six_facets()
    {
        var triangles = new TriangleList();
        triangles.Begin(SurfaceKind.Blade);
        foreach (var triangle in Triangles(drawn: false)) triangles.Add(triangle[0], triangle[1], triangle[2]);
        var facets = new CanopySim.Light.FacetList(triangles.Build(new Cell(4, 4)));
        Assert.Equal(6, facets.Count);
        var drawn = Triangles(drawn: true).SelectMany(corners => corners).Distinct().ToList();
        var light = Triangles(drawn: false).SelectMany(corners => corners).Distinct().ToList();
        Assert.All(light, corner => Assert.Contains(drawn, other => Vector3.Distance(corner, other) < 1e-5f));

        // The point on the midrib where the drawn triangles meet is all that light's lack.
        Assert.Equal(drawn.Count - 1, light.Count);
    }

    private static IEnumerable<Vector3[]> Triangles(bool drawn) =>
        (drawn ? BladeMesh.Drawn : BladeMesh.ForLight).Corners.Chunk(3);

    private static Vector3 Normal(Vector3[] triangle) =>
        Vector3.Cross(triangle[1] - triangle[0], triangle[2] - triangle[0]);

    private static double Area(Vector3[] triangle) => 0.5 * Normal(triangle).Length();
}
