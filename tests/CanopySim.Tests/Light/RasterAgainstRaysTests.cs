using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.RayTracing;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>The raster and the ray tracer, which share no code, on the same scenes: folded blades, wood, blades across the cell's edges.</summary>
public class RasterAgainstRaysTests
{
    private const double Pixel = 0.002;
    private const int Points = 400;

    [Theory]
    [InlineData(20, 10, 0, 0)]
    [InlineData(55, 200, 0, 0)]
    [InlineData(80, 75, 0, 0)]
    [InlineData(87, 301, 0, 0)]
    [InlineData(89, 100, 0, 0)]
    [InlineData(50, 140, 0.25, -0.1)]
    public void The_sun_reaches_the_same_share_of_each_leaf(double zenith, double azimuth, double riseAcross, double riseAlong)
    {
        var scene = RandomScenes.Hedge(60, (ulong)zenith, new Cell(1, 0.8, riseAcross, riseAlong), hedgeWidth: 1.1f);
        var sun = SkyRings.Direction(zenith, azimuth);
        var light = LightCases.SunOnly(scene, sun, Pixel);
        var tracer = new PeriodicRayTracer(scene);
        var direction = Point3.From(sun).Normalized();
        var areas = scene.SurfaceAreas();
        var (chi, compared) = (0.0, 0);
        for (var surface = 0; surface < scene.SurfaceCount; surface++)
        {
            if (scene.Kinds[surface] != SurfaceKind.Blade) continue;
            var points = new SurfacePoints(scene, surface);
            var seen = 0;
            for (var point = 0; point < Points; point++)
            {
                var (place, triangle) = points.At(point);
                if (!tracer.IsBlocked(new Ray(place, direction), triangle)) seen++;
            }

            // Standard error of the rays, and of the raster as if its pixels were thrown at random (a grid does better); a share
            // near 0 or 1 counts as one point away from it.
            var share = seen / (double)Points;
            var middle = Math.Clamp(share, 1.0 / Points, 1 - (1.0 / Points));
            var pixels = Math.Max(10, Projected(scene, surface, direction) / (Pixel * Pixel));
            var error = Math.Sqrt(middle * (1 - middle) * ((1.0 / Points) + (1 / pixels)));
            var difference = light.SunlitShare[surface] - share;
            Assert.True(Math.Abs(difference) < 5 * error, $"leaf {surface}: raster {light.SunlitShare[surface]}, rays {share} ± {error}");
            (chi, compared) = (chi + (difference * difference / (error * error)), compared + 1);
            Assert.InRange(light.AbsorbedParDirect[surface], 0, areas[surface]);
        }

        // 60 leaves: the mean square may not exceed 1 by more than 4 standard errors, sqrt(2 / n) each.
        Assert.InRange(chi / compared, 0, 1 + (4 * Math.Sqrt(2.0 / compared)));
    }

    [Theory]
    [InlineData(20, 10, 0, 0)]
    [InlineData(60, 200, 0, 0)]
    [InlineData(80, 45, 0, 0)]
    [InlineData(40, 140, 0.25, -0.1)]
    public void The_sun_reaches_the_same_share_of_the_ground(double zenith, double azimuth, double riseAcross, double riseAlong)
    {
        const int Rays = 20_000;
        var cell = new Cell(1, 0.8, riseAcross, riseAlong);
        var scene = RandomScenes.Hedge(25, 40 + (ulong)zenith, cell, hedgeWidth: 1.1f, leafSize: 0.1f);
        var sun = SkyRings.Direction(zenith, azimuth);
        var tracer = new PeriodicRayTracer(scene);
        var direction = Point3.From(sun).Normalized();
        var seen = 0;
        for (var ray = 0; ray < Rays; ray++)
        {
            var (x, y) = (cell.Across * SeededValue.Uniform(1, "ground x", ray), cell.Along * SeededValue.Uniform(1, "ground y", ray));
            if (!tracer.IsBlocked(new Ray(new Point3(x, y, (riseAcross * x) + (riseAlong * y)), direction))) seen++;
        }

        var share = seen / (double)Rays;
        var error = Math.Sqrt(share * (1 - share) / Rays);
        Assert.InRange(share, 0.02, 0.98);
        Assert.Equal(share, LightCases.SunOnly(scene, sun, Pixel).GroundSunlitFraction[0], (4 * error) + 0.001);
    }

    // Black leaves under a uniform sky take the irradiance times the share of the sky that each side sees, weighted by the cosine.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.3, 0.1)]
    public void Each_leaf_sees_the_same_share_of_the_sky(double riseAcross, double riseAlong)
    {
        const int Rays = 2_000;
        var cell = new Cell(1, 0.8, riseAcross, riseAlong);
        var scene = RandomScenes.Hedge(50, 9, cell, hedgeWidth: 1.1f);
        var directions = SkyRings.Spiral(400);
        var light = LightGeometry.Build(scene, directions, LightCases.Quality(0.005, 0.005), 2).Solve(
            [LightCases.UniformSky()], LightCases.Black, 2);
        var tracer = new PeriodicRayTracer(scene);
        var areas = scene.SurfaceAreas();
        var (chi, compared, all, allByRays) = (0.0, 0, 0.0, 0.0);
        for (var surface = 0; surface < scene.SurfaceCount; surface++)
        {
            if (scene.Kinds[surface] != SurfaceKind.Blade) continue;
            var points = new SurfacePoints(scene, surface);
            var seen = 0;
            for (var ray = 0; ray < Rays; ray++)
            {
                var (place, triangle) = points.At(ray);
                var normal = (ray % 2 == 0 ? 1 : -1) * points.Normal(triangle);
                var direction = Hemisphere.Cosine(normal, SeededValue.Uniform(2, "height", surface, ray), SeededValue.Uniform(2, "turn", surface, ray));
                var rise = direction.Z - (riseAcross * direction.X) - (riseAlong * direction.Y);
                if (direction.Z > 0 && rise > 0 && !tracer.IsBlocked(new Ray(place, direction), triangle)) seen++;
            }

            var share = seen / (double)Rays;
            var absorbed = light.AbsorbedPar[surface] / (2 * areas[surface]);

            // The sky's sampling: 2 % of the leaf's light, measured for 400 directions.
            var error = Math.Sqrt((share * (1 - share) / Rays) + Math.Pow(0.02 * share, 2));
            Assert.True(Math.Abs(absorbed - share) < 5 * error, $"leaf {surface}: raster {absorbed}, rays {share} ± {error}");
            (chi, compared) = (chi + Math.Pow((absorbed - share) / error, 2), compared + 1);
            (all, allByRays) = (all + absorbed, allByRays + share);
        }

        Assert.InRange(chi / compared, 0, 1 + (4 * Math.Sqrt(2.0 / compared)));
        Assert.Equal(allByRays / compared, all / compared, 0.01 * all / compared);
    }

    private static double Projected(Scene scene, int surface, Point3 direction)
    {
        var area = 0.0;
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            if (scene.SurfaceOfTriangle[triangle] != surface) continue;
            var (a, b, c) = (scene.Corners[3 * triangle], scene.Corners[(3 * triangle) + 1], scene.Corners[(3 * triangle) + 2]);
            area += 0.5 * Math.Abs(Point3.Dot(Point3.From(Vector3.Cross(b - a, c - a)), direction));
        }

        return area;
    }
}
