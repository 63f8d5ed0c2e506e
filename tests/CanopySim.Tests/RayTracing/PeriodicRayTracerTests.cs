using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.RayTracing;
using CanopySim.Tests.Light;
using Xunit;

namespace CanopySim.Tests.RayTracing;

public class PeriodicRayTracerTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.2, -0.1)]
    public void Agrees_with_copies_of_the_cell_laid_side_by_side(double riseAcross, double riseAlong)
    {
        var cell = new Cell(1, 0.8, riseAcross, riseAlong);
        var scene = RandomScenes.Hedge(40, 3, cell, hedgeWidth: 1.2f);
        var tracer = new PeriodicRayTracer(scene);
        var copies = Copies(scene, 12);
        var hierarchy = new BoundingVolumeHierarchy(copies);
        var hits = 0;
        for (var index = 0; index < 1500; index++)
        {
            double Value(string purpose) => SeededValue.Uniform(5, purpose, index);
            var (x, y) = (Value("x") * cell.Across, Value("y") * cell.Along);
            var up = index % 2 == 0;

            // Not lower than 15°, so that a ray stays within the copies.
            var direction = Point3.From(SkyRings.Direction(75 * Value("zenith"), 360 * Value("azimuth")));
            var origin = new Point3(x, y, (up ? 0.01 : 2.2) + (riseAcross * x) + (riseAlong * y));
            var ray = new Ray(origin, up ? direction : -1 * direction);
            var rise = ray.Direction.Z - (riseAcross * ray.Direction.X) - (riseAlong * ray.Direction.Y);
            if (Math.Abs(rise) < 0.2) continue;
            var expected = hierarchy.Find(ray, up ? 1e3 : 2.2 / -rise);
            var found = tracer.Closest(ray);
            Assert.Equal(expected is not null, found is not null);
            Assert.Equal(expected is not null, tracer.IsBlocked(ray));
            if (expected is not { } hit || found is not { } own) continue;
            hits++;
            Assert.Equal(hit.Triangle % scene.TriangleCount, own.Triangle);
            Assert.Equal(hit.Distance, own.Distance, 1e-9);
        }

        Assert.True(hits > 200, $"{hits} hits test nothing");
    }

    [Fact]
    public void Rays_that_leave_a_triangle_do_not_hit_it_but_its_neighbor_in_a_fold()
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        var blade = scenes.AddSurface(SurfaceKind.Blade);

        // A valley: two halves rise at 45° from the fold along y at x = 0.5.
        scenes.AddQuad(blade, new Vector3(0.5f, 0.3f, 1), new Vector3(0.2f, 0, 0.2f), new Vector3(0, 0.4f, 0));
        scenes.AddQuad(blade, new Vector3(0.5f, 0.3f, 1), new Vector3(0, 0.4f, 0), new Vector3(-0.2f, 0, 0.2f));
        var tracer = new PeriodicRayTracer(scenes.Build());

        // A start as a path tracer makes it: on triangle 0 but for rounding.
        var down = new Ray(new Point3(0.6, 0.45, 2), new Point3(0, 0, -1));
        var start = down.At(tracer.Closest(down)!.Value.Distance);
        Assert.Equal(0, tracer.Closest(down)?.Triangle);
        Assert.Null(tracer.Closest(new Ray(start, new Point3(0, 0, 1)), 0));
        Assert.Null(tracer.Closest(new Ray(start, new Point3(0, 0, -1)), 0));
        var hit = tracer.Closest(new Ray(start, new Point3(-1, 0, 0)), 0);
        Assert.True(hit is { Triangle: 2 or 3, UpperSide: true });
        Assert.Equal(0.2, hit.Value.Distance, 1e-6);
    }

    [Fact]
    public void A_ray_goes_on_where_it_left_the_cell()
    {
        var scenes = new RandomScenes(new Cell(1, 1));
        var wall = scenes.AddSurface(SurfaceKind.Blade);
        scenes.AddQuad(wall, new Vector3(0.25f, 0.1f, 0), new Vector3(0, 0, 2), new Vector3(0, 0.5f, 0));
        var tracer = new PeriodicRayTracer(scenes.Build());

        // Passes beside the walls of the next two cells (at 0.84 and 0.05 along) and meets the third at x = 3.25, 0.25 along.
        var way = new Point3(2.95, 0.6, 0.1);
        var hit = tracer.Closest(new Ray(new Point3(0.3, 0.65, 0.5), way.Normalized()));
        Assert.Equal(Math.Sqrt(Point3.Dot(way, way)), hit?.Distance ?? -1, 1e-6);
        Assert.Null(tracer.Closest(new Ray(new Point3(0.3, 0.65, 0.5), new Point3(0, 1, 0.1).Normalized())));
    }

    private static Point3[] Copies(Scene scene, int reach)
    {
        var corners = new List<Point3>();
        for (var i = -reach; i <= reach; i++)
        {
            for (var j = -reach; j <= reach; j++)
            {
                var (x, y) = (i * scene.Cell.Across, j * scene.Cell.Along);
                var shift = new Point3(x, y, (scene.Cell.RiseAcross * x) + (scene.Cell.RiseAlong * y));
                corners.AddRange(scene.Corners.Select(corner => Point3.From(corner) + shift));
            }
        }

        return [.. corners];
    }
}
