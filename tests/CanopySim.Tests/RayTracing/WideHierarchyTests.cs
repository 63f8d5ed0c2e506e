using System.Numerics;
using CanopySim.Numerics;
using CanopySim.RayTracing;
using Xunit;

namespace CanopySim.Tests.RayTracing;

/// <summary>The fast tree in single precision beside its slow twin in double, on the same triangles and rays.</summary>
public class WideHierarchyTests
{
    private const ulong Seed = 12;

    // Coordinates below 2 m are known to 1.2e-7 m; a few of them meet in a test [m].
    private const double Rounding = 2e-6;

    private static readonly Vector3[] Axes = [Vector3.UnitX, -Vector3.UnitX, Vector3.UnitY, -Vector3.UnitY, Vector3.UnitZ, -Vector3.UnitZ];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(9)]
    [InlineData(60)]
    [InlineData(3000)]
    public void Finds_what_the_slow_twin_finds(int count)
    {
        var corners = Triangles(count);
        var (wide, twin) = (new WideHierarchy(corners), new BoundingVolumeHierarchy([.. corners.Select(Point3.From)]));
        var (hits, undecided) = (0, 0);
        const int Rays = 20_000;
        for (var ray = 0; ray < Rays; ray++)
        {
            var (origin, direction) = RandomRay(ray);
            var limit = ray % 3 == 0 ? float.PositiveInfinity : (float)Value("limit", ray);
            Compare(wide, twin, corners, origin, direction, limit, -1, ref hits, ref undecided);
        }

        Assert.True(hits > (count > 50 ? Rays / 20 : 20), $"{hits} hits test little");
        Assert.True(undecided <= Rays / 10_000, $"{undecided} rays pass a rim within rounding");
    }

    [Fact]
    public void Rays_that_start_on_a_triangle_except_that_one_alone()
    {
        var corners = Triangles(800);
        var (wide, twin) = (new WideHierarchy(corners), new BoundingVolumeHierarchy([.. corners.Select(Point3.From)]));
        var (hits, undecided) = (0, 0);
        const int Rays = 20_000;
        for (var ray = 0; ray < Rays; ray++)
        {
            var triangle = ray % 800;
            var (a, b, c) = (corners[3 * triangle], corners[(3 * triangle) + 1], corners[(3 * triangle) + 2]);
            var (u, v) = ((float)Value("u", ray) / 2, (float)Value("v", ray) / 2);
            Compare(wide, twin, corners, a + (u * (b - a)) + (v * (c - a)), RandomRay(ray).Direction, float.PositiveInfinity, triangle, ref hits, ref undecided);
        }

        Assert.True(hits > Rays / 20, $"{hits} hits test little");
        Assert.True(undecided <= Rays / 10_000, $"{undecided} rays pass a rim within rounding");
    }

    // Whole numbers are exact in single precision: rims belong to their triangles, and no ray slips between two.
    [Fact]
    public void Rays_along_an_axis_hit_every_place_of_a_pavement_once_its_rims_too()
    {
        const int Size = 12;
        foreach (var axis in new[] { 0, 1, 2 })
        {
            var corners = new List<Vector3>();
            for (var i = 0; i < Size; i++)
            {
                for (var j = 0; j < Size; j++)
                {
                    corners.AddRange([At(i, j, 3), At(i + 1, j, 3), At(i + 1, j + 1, 3)]);
                    corners.AddRange([At(i, j, 3), At(i + 1, j + 1, 3), At(i, j + 1, 3)]);
                }
            }

            var hierarchy = new WideHierarchy(corners.ToArray());
            for (var i = -1; i <= (2 * Size) + 1; i++)
            {
                for (var j = -1; j <= (2 * Size) + 1; j++)
                {
                    var inside = i >= 0 && i <= 2 * Size && j >= 0 && j <= 2 * Size;
                    foreach (var side in new[] { 1, -1 })
                    {
                        var (origin, way) = (At(i / 2f, j / 2f, 3 - (2 * side)), side * At(0, 0, 1));
                        Assert.Equal(inside ? 2f : null, hierarchy.Closest(origin, way)?.Distance);
                        Assert.Equal(inside, hierarchy.IsBlocked(origin, way));
                        Assert.False(hierarchy.IsBlocked(origin, -way));
                    }
                }
            }

            Vector3 At(float u, float v, float w) => axis switch { 0 => new Vector3(w, u, v), 1 => new Vector3(v, w, u), _ => new Vector3(u, v, w) };
        }
    }

    [Fact]
    public void Both_ends_of_a_ray_count()
    {
        var hierarchy = new WideHierarchy([new(0, 0, 1), new(1, 0, 1), new(0, 1, 1), new(0, 0, 2), new(1, 0, 2), new(0, 1, 2)]);
        var (start, up) = (new Vector3(0.25f, 0.25f, 0), Vector3.UnitZ);
        Assert.Equal(new WideHit(0, 1), hierarchy.Closest(start, up));
        Assert.Equal(new WideHit(0, 1), hierarchy.Closest(start, up, 1));
        Assert.Null(hierarchy.Closest(start, up, 0.999999f));
        Assert.Equal(new WideHit(0, 0), hierarchy.Closest(start + up, up));
        Assert.Equal(new WideHit(1, 1), hierarchy.Closest(start + up, up, except: 0));
        Assert.Equal(new WideHit(1, 2), hierarchy.Closest(start, up, 2, except: 0));
        Assert.False(hierarchy.IsBlocked(start, up, 1.5f, except: 0));
        Assert.False(hierarchy.IsBlocked(start, -up));
        Assert.True(hierarchy.IsBlocked(start + (3 * up), -up, 1));
    }

    [Fact]
    public void Takes_no_triangles_triangles_without_area_and_many_in_one_place()
    {
        Assert.Null(new WideHierarchy([]).Closest(default, Vector3.UnitZ));
        Assert.False(new WideHierarchy([]).IsBlocked(default, Vector3.UnitZ));
        Vector3[] point = [new(0, 0, 1), new(0, 0, 1), new(0, 0, 1)];
        Vector3[] line = [new(-1, 0, 1), new(1, 0, 1), new(0, 0, 1)];
        Vector3[] one = [new(-1, -1, 1), new(1, -1, 1), new(0, 1, 1)];
        foreach (var direction in Axes)
        {
            Assert.Null(new WideHierarchy(point).Closest(default, direction));
            Assert.Null(new WideHierarchy(line).Closest(default, direction));
            Assert.Null(new WideHierarchy([.. Enumerable.Repeat(line, 100).SelectMany(corner => corner)]).Closest(new Vector3(0, 0, 1), direction));
        }

        // A hundred in one place leave nothing to split; the smallest number is the answer, whatever the tree.
        var many = new WideHierarchy([.. point, .. line, .. Enumerable.Repeat(one, 100).SelectMany(corner => corner)]);
        Assert.Equal(new WideHit(2, 1), many.Closest(default, Vector3.UnitZ));
        Assert.Equal(new WideHit(3, 1), many.Closest(default, Vector3.UnitZ, except: 2));
        Assert.Throws<ArgumentException>(() => new WideHierarchy([new(0, 0, float.NaN), default, default]));
        Assert.Throws<ArgumentException>(() => new WideHierarchy([new(0, 0, float.PositiveInfinity), default, default]));
    }

    // Over 18 decades, each triangle 11 % larger than the one before: splits cut off few at a time.
    [Fact]
    public void Answers_in_a_lopsided_tree()
    {
        const int Count = 400;
        var corners = new Vector3[3 * Count];
        for (var triangle = 0; triangle < Count; triangle++)
        {
            var at = MathF.Pow(10, -9 + (0.045f * triangle));
            (corners[3 * triangle], corners[(3 * triangle) + 1], corners[(3 * triangle) + 2]) =
                (new(at, -at, -at), new(at, at, -at), new(at, 0, at));
        }

        var (wide, twin) = (new WideHierarchy(corners), new BoundingVolumeHierarchy([.. corners.Select(Point3.From)]));
        for (var triangle = 0; triangle < Count; triangle++)
        {
            var origin = new Vector3(corners[3 * triangle].X, 0, 0);
            Assert.Equal(triangle, wide.Closest(origin, Vector3.UnitX)?.Triangle);
            Assert.Equal(triangle, wide.Closest(origin, -Vector3.UnitX)?.Triangle);
            var expected = twin.Find(new Ray(Point3.From(origin), new Point3(1, 0, 0)), 1e30, (hit, _) => hit == triangle);
            Assert.Equal(expected?.Triangle, wide.Closest(origin, Vector3.UnitX, except: triangle)?.Triangle);
        }
    }

    [Fact]
    public void Answers_alike_on_any_number_of_threads_and_allocates_nothing()
    {
        const int Rays = 20_000;
        var hierarchy = new WideHierarchy(Triangles(2000));
        var (alone, together) = (new WideHit?[Rays], new WideHit?[Rays]);
        for (var ray = 0; ray < Rays; ray++) Trace(alone, ray);
        Parallel.For(0, Rays, ray => Trace(together, ray));
        Assert.Equal(alone, together);

        var (origin, direction) = RandomRay(1);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var ray = 0; ray < 1000; ray++)
        {
            hierarchy.IsBlocked(origin, direction);
            hierarchy.Closest(origin, direction);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());

        void Trace(WideHit?[] into, int ray)
        {
            var (start, way) = RandomRay(ray);
            into[ray] = hierarchy.Closest(start, way);
            Assert.Equal(into[ray] is not null, hierarchy.IsBlocked(start, way));
        }
    }

    private static void Compare(
        WideHierarchy wide, BoundingVolumeHierarchy twin, Vector3[] corners, Vector3 origin, Vector3 direction, float limit, int except, ref int hits, ref int undecided)
    {
        var expected = twin.Find(new Ray(Point3.From(origin), Point3.From(direction)), limit, (triangle, _) => triangle == except);
        var found = wide.Closest(origin, direction, limit, except);
        Assert.Equal(found is not null, wide.IsBlocked(origin, direction, limit, except));
        if (expected is not null) hits++;
        if (expected?.Triangle == found?.Triangle)
        {
            // A grazing ray's distance is known less well: coordinates' rounding over the sine of its angle.
            if (expected is { } both) Assert.Equal(both.Distance, found!.Value.Distance, Rounding / Sine(corners, both.Triangle, direction));
            return;
        }

        // One of the two sees a triangle first that the other misses: only by a hair, or hits at the same distance.
        undecided++;
        if (expected is { } own && found is { } other && Math.Abs(own.Distance - other.Distance) < Rounding) return;
        var nearer = expected is { } slow && !(found?.Distance < slow.Distance) ? slow.Triangle : found!.Value.Triangle;
        var rim = NearMiss.ToRim(corners, nearer, origin, direction);
        var distance = expected is { } first && nearer == first.Triangle ? first.Distance : found!.Value.Distance;
        Assert.True(
            rim < Rounding || Math.Min(distance, Math.Abs(distance - limit)) < Rounding / Sine(corners, nearer, direction),
            $"from {origin} along {direction}: twin {expected}, wide {found}, {rim} m from the rim");
    }

    private static double Sine(Vector3[] corners, int triangle, Vector3 direction)
    {
        var (a, b, c) = (Point3.From(corners[3 * triangle]), Point3.From(corners[(3 * triangle) + 1]), Point3.From(corners[(3 * triangle) + 2]));
        return Math.Abs(Point3.Dot(Point3.Cross(b - a, c - a).Normalized(), Point3.From(direction)));
    }

    // Every fourth lies flat, parallel to an axis, where boxes have no thickness; every tenth has no area.
    private static Vector3[] Triangles(int count)
    {
        var corners = new Vector3[3 * count];
        var size = (float)Math.Clamp(2 / Math.Sqrt(count), 0.05, 0.6);
        for (var at = 0; at < corners.Length; at++)
        {
            var triangle = at / 3;
            var center = new Vector3((float)Value("x", triangle), (float)Value("y", triangle), (float)Value("z", triangle));
            var aside = new Vector3((float)Value("dx", at) - 0.5f, (float)Value("dy", at) - 0.5f, triangle % 4 == 0 ? 0 : (float)Value("dz", at) - 0.5f);
            corners[at] = center + (size * aside);
            if (triangle % 10 == 3 && at % 3 > 0) corners[at] = corners[at - 1];
        }

        return corners;
    }

    private static (Vector3 Origin, Vector3 Direction) RandomRay(int ray)
    {
        var direction = ray % 10 == 0
            ? Axes[ray / 10 % 6]
            : Vector3.Normalize(new Vector3((float)Value("rx", ray) - 0.5f, (float)Value("ry", ray) - 0.5f, (float)Value("rz", ray) - 0.5f));
        return (new Vector3((float)Value("ox", ray), (float)Value("oy", ray), (float)Value("oz", ray)), direction);
    }

    private static double Value(string purpose, int index) => SeededValue.Uniform(Seed, purpose, index);

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    public void A_ray_from_nowhere_is_refused(float coordinate)
    {
        var tree = new WideHierarchy([Vector3.Zero, Vector3.UnitX, Vector3.UnitY]);
        Assert.Throws<ArgumentException>(() => tree.IsBlocked(new Vector3(0, coordinate, 0), Vector3.UnitZ));
        Assert.Throws<ArgumentException>(() => tree.Closest(new Vector3(coordinate), Vector3.UnitZ));
    }
}
