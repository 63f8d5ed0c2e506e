using CanopySim.Numerics;
using CanopySim.RayTracing;
using Xunit;

namespace CanopySim.Tests.RayTracing;

public class BoundingVolumeHierarchyTests
{
    private const ulong Seed = 7;

    [Fact]
    public void Finds_what_a_walk_over_all_triangles_finds()
    {
        var corners = Triangles(400);
        var hierarchy = new BoundingVolumeHierarchy(corners);
        var hits = 0;
        for (var ray = 0; ray < 3000; ray++)
        {
            var tested = RandomRay(ray);
            var expected = Walk(corners, tested, 10);
            Assert.Equal(expected, hierarchy.Find(tested, 10));
            Assert.Equal(expected is not null, hierarchy.Find(tested, 10, any: true) is not null);
            if (expected is not null) hits++;
        }

        Assert.InRange(hits, 300, 2700);
    }

    [Fact]
    public void Keeps_to_the_limit_and_to_what_is_skipped()
    {
        var hierarchy = new BoundingVolumeHierarchy([new(0, 0, 1), new(1, 0, 1), new(0, 1, 1), new(0, 0, 2), new(1, 0, 2), new(0, 1, 2)]);
        var up = new Ray(new Point3(0.2, 0.2, 0), new Point3(0, 0, 1));
        Assert.Equal((0, 1.0), hierarchy.Find(up, 5));
        Assert.Null(hierarchy.Find(up, 0.5));
        Assert.Equal((1, 2.0), hierarchy.Find(up, 5, (triangle, _) => triangle == 0));
        Assert.Null(hierarchy.Find(up with { Direction = new Point3(0, 0, -1) }, 5));
    }

    [Fact]
    public void Takes_no_triangles_and_triangles_without_area()
    {
        var ray = new Ray(new Point3(0, 0, 0), new Point3(0, 0, 1));
        Assert.Null(new BoundingVolumeHierarchy([]).Find(ray, 10));
        Assert.Null(new BoundingVolumeHierarchy([new(0, 0, 1), new(0, 0, 1), new(0, 0, 1)]).Find(ray, 10));

        // A hundred triangles in one place leave nothing to split.
        Point3[] one = [new(-1, -1, 1), new(1, -1, 1), new(0, 1, 1)];
        Assert.Equal((0, 1.0), new BoundingVolumeHierarchy([.. Enumerable.Repeat(one, 100).SelectMany(triangle => triangle)]).Find(ray, 10));
    }

    private static (int Triangle, double Distance)? Walk(Point3[] corners, in Ray ray, double limit)
    {
        (int Triangle, double Distance)? best = null;
        for (var triangle = 0; triangle < corners.Length / 3; triangle++)
        {
            var distance = TriangleIntersection.Distance(ray, corners[3 * triangle], corners[(3 * triangle) + 1], corners[(3 * triangle) + 2]);
            if (distance < (best?.Distance ?? limit)) best = (triangle, distance.Value);
        }

        return best;
    }

    // Every fourth lies flat, parallel to an axis, where boxes have no thickness.
    private static Point3[] Triangles(int count)
    {
        var corners = new Point3[3 * count];
        for (var at = 0; at < corners.Length; at++)
        {
            var triangle = at / 3;
            var center = new Point3(Value("x", triangle), Value("y", triangle), Value("z", triangle));
            var aside = 0.2 * new Point3(Value("dx", at) - 0.5, Value("dy", at) - 0.5, triangle % 4 == 0 ? 0 : Value("dz", at) - 0.5);
            corners[at] = center + aside;
        }

        return corners;
    }

    private static Ray RandomRay(int ray)
    {
        var direction = ray % 10 == 0
            ? new Point3(0, 0, 1)
            : new Point3(Value("rx", ray) - 0.5, Value("ry", ray) - 0.5, Value("rz", ray) - 0.5).Normalized();
        return new Ray(new Point3(Value("ox", ray), Value("oy", ray), Value("oz", ray) - 0.2), direction);
    }

    private static double Value(string purpose, int index) => SeededValue.Uniform(Seed, purpose, index);
}
