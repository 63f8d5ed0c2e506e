using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.RayTracing;
using CanopySim.Tests.Light;
using Xunit;

namespace CanopySim.Tests.RayTracing;

/// <summary>The fast periodic tracer beside its slow twin, on level ground and slopes.</summary>
public class WidePeriodicTracerTests
{
    // Single precision against double: rays whose answers may differ, since they pass a rim within the rounding of coordinates.
    private const double UndecidedShare = 1e-4;

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.2, -0.1)]
    [InlineData(-0.4, 0.3)]
    public void Finds_what_the_slow_twin_finds(double riseAcross, double riseAlong)
    {
        const int Rays = 30_000;
        var cell = new Cell(1, 0.8, riseAcross, riseAlong);

        // Few leaves in a hedge wider than the cell: rays cross many cells, blades reach over the walls.
        var scene = RandomScenes.Hedge(25, 4, cell, hedgeWidth: 1.3f);
        var (wide, twin) = (new WidePeriodicTracer(scene), new PeriodicRayTracer(scene));
        var points = Enumerable.Range(0, scene.SurfaceCount).Select(surface => new SurfacePoints(scene, surface)).ToArray();
        var (hits, undecided, farthest) = (0, 0, 0.0);
        for (var index = 0; index < Rays; index++)
        {
            double Value(string purpose) => SeededValue.Uniform(6, purpose, index);
            var direction = Point3.From(SkyRings.Direction(89.5 * Value("zenith"), 360 * Value("azimuth"))).Normalized();
            if (index % 5 == 0) direction = (index / 5 % 3) switch { 0 => new Point3(0, 0, 1), 1 => new Point3(0, 1, 0), _ => new Point3(1, 0, 0) };
            if (index % 2 == 1) direction = -1 * direction;
            var (x, y) = ((20 * Value("x")) - 10, (20 * Value("y")) - 10);
            var (origin, from) = (new Point3(x, y, (5 * Value("z")) + (riseAcross * x) + (riseAlong * y)), -1);
            if (index % 4 == 0) (origin, from) = points[index % points.Length].At(index);

            // Level rays over level ground between the leaves never end.
            var rise = direction.Z - (riseAcross * direction.X) - (riseAlong * direction.Y);
            if (Math.Abs(rise) < 1e-3) continue;
            var ray = new Ray(origin, direction);
            var (expected, found) = (twin.Closest(ray, from), wide.Closest(ray, from));
            if (expected is not null) hits++;
            if (expected?.Triangle != found?.Triangle || expected?.UpperSide != found?.UpperSide) undecided++;
            else if (expected is { } hit)
            {
                Assert.Equal(hit.Distance, found!.Value.Distance, 1e-5 + (3e-7 * hit.Distance));
                farthest = Math.Max(farthest, hit.Distance);
            }

            if (wide.IsBlocked(ray, from) != (found is not null)) undecided++;
        }

        Assert.True(hits > Rays / 6, $"{hits} hits test little");
        Assert.True(farthest > 10, $"no hit beyond {farthest} m");
        Assert.True(undecided <= UndecidedShare * Rays, $"{undecided} of {Rays} rays differ");
    }

    [Fact]
    public void A_triangle_of_start_is_not_hit_where_the_ray_starts_but_its_copies_are()
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        var wall = scenes.AddSurface(SurfaceKind.Blade);

        // Reaches over the wall of the cell at x = 1, so it stands in the tree twice.
        scenes.AddTriangle(wall, new Vector3(0.9f, 0.2f, 0), new Vector3(1.1f, 0.2f, 2), new Vector3(1.0f, 0.8f, 1));
        var scene = scenes.Build();
        var tracer = new WidePeriodicTracer(scene);
        var points = new SurfacePoints(scene, 0);
        var normal = points.Normal(0);
        for (var index = 0; index < 200; index++)
        {
            foreach (var (shiftX, shiftY) in new[] { (0, 0), (-1, 0), (3, -2) })
            {
                var start = points.At(index).Place + new Point3(shiftX, shiftY, 0);
                foreach (var direction in new[] { normal, -1 * normal, new Point3(1, 0, 0), new Point3(-1, 0, 0) })
                {
                    var hit = tracer.Closest(new Ray(start, direction), 0);
                    Assert.True(hit is null or { Distance: > 0.5 }, $"{start} hits itself at {hit?.Distance} m");
                }

                // Straight across the row the next copy stands one cell on.
                Assert.Equal(1, tracer.Closest(new Ray(start, new Point3(1, 0, 0)), 0)?.Distance ?? 0, 1e-5);
                Assert.True(tracer.IsBlocked(new Ray(start, new Point3(-1, 0, 0)), 0));
            }
        }
    }

    [Fact]
    public void Rays_that_leave_a_triangle_hit_its_neighbor_in_a_fold()
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        var blade = scenes.AddSurface(SurfaceKind.Blade);
        scenes.AddQuad(blade, new Vector3(0.5f, 0.3f, 1), new Vector3(0.2f, 0, 0.2f), new Vector3(0, 0.4f, 0));
        scenes.AddQuad(blade, new Vector3(0.5f, 0.3f, 1), new Vector3(0, 0.4f, 0), new Vector3(-0.2f, 0, 0.2f));
        var tracer = new WidePeriodicTracer(scenes.Build());
        var start = new Point3(0.6, 0.45, 1.1);
        Assert.Null(tracer.Closest(new Ray(start, new Point3(0, 0, 1)), 0));
        Assert.Null(tracer.Closest(new Ray(start, new Point3(0, 0, -1)), 0));
        var hit = tracer.Closest(new Ray(start, new Point3(-1, 0, 0)), 0);
        Assert.True(hit is { Triangle: 2 or 3, UpperSide: true });
        Assert.Equal(0.2, hit.Value.Distance, 1e-6);
    }

    [Fact]
    public void An_empty_cell_blocks_nothing()
    {
        var tracer = new WidePeriodicTracer(new RandomScenes(new Cell(2, 1)).Build());
        Assert.Null(tracer.Closest(new Ray(new Point3(0.5, 0.5, 3), new Point3(0, 0, -1))));
        Assert.False(tracer.IsBlocked(new Ray(new Point3(0.5, 0.5, 0), new Point3(0.6, 0, 0.8))));
    }
}
