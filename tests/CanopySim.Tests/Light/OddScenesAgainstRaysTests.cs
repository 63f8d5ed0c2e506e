using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.RayTracing;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>
/// The raster against rays in double precision on 200 odd scenes and suns: pixel by pixel, and leaf by leaf from other points.
/// The scenes are the same in every run, so a bound of 4 standard errors cannot fail by chance tomorrow.
/// </summary>
public class OddScenesAgainstRaysTests
{
    private const int Scenes = 200;

    // Single precision places an edge within about 2⁻²² of the farthest coordinate, in pixels; and a height that well in metres.
    private const double EdgeTolerance = 0.003;
    private const double HeightTolerance = 1e-4;

    /// <summary>
    /// A ray comes down through each pixel's sample point, and four around it: where all five meet the same face and nothing
    /// lies just below it, the pixel must be that face's. The pixels of a face are thus known but for the few in doubt.
    /// </summary>
    [Fact]
    public void Each_face_has_the_pixels_that_rays_give_it()
    {
        var (pixels, doubtful) = (0L, 0L);
        for (var number = 0; number < Scenes; number++)
        {
            var scene = OddScenes.Of(number);
            var sun = OddScenes.Sun(number, scene.Cell);
            var pixel = PixelFor(scene.Cell, sun, 600);
            var faces = new FaceRays(scene, sun);
            var grid = ProjectedGrid.For(scene.Cell, sun, pixel);
            for (var row = 0; row < grid.Height; row++)
                for (var column = 0; column < grid.Width; column++)
                    faces.Look((column + 0.5) / grid.ColumnsPerMeter, (row + 0.5) / grid.RowsPerMeter, EdgeTolerance / grid.ColumnsPerMeter, EdgeTolerance / grid.RowsPerMeter);

            var counts = SunCounts.Of(scene, sun, pixel);
            for (var face = 0; face < faces.Certain.Length; face++)
            {
                var (least, most) = (faces.Certain[face], faces.Certain[face] + faces.Doubtful[face]);
                Assert.True(counts.Pixels[face] >= least && counts.Pixels[face] <= most, $"scene {number}, face {face}: {counts.Pixels[face]} pixels, rays {least} to {most}");
            }

            (pixels, doubtful) = (pixels + grid.PixelCount, doubtful + faces.InDoubt);
        }

        TestContext.Current.SendDiagnosticMessage($"pixels {pixels}, doubtful {doubtful}");
        Assert.InRange(doubtful, 0, 0.05 * pixels);
    }

    /// <summary>
    /// The raster's error on one surface, with p its sunlit share: each of n pixels on a triangle falls on the sunlit or the shaded
    /// side of a shadow's edge, at worst as if thrown at random, √(p (1 − p) / n), where an edge of L pixels in a regular grid would give
    /// about 0.27 √L / n (Kendall 1948, from memory). Triangles count by their area a, so one that the sun sees nearly edge on
    /// counts much and has few pixels: the surface as a whole is as good as 1 / Σ (a² / n) pixels. Rays add √(p (1 − p) / N). Of both
    /// 4 standard errors, and Bernstein's term for shares near 0 and 1. Triangles of fewer than 16 pixels may take the share of the
    /// rest of their surface: their share of the area is added whole.
    /// </summary>
    [Fact]
    public void Each_surface_has_the_sunlit_area_that_rays_give_it()
    {
        const int Points = 150;
        var (chi, compared, worst) = (0.0, 0, 0.0);
        for (var number = 0; number < Scenes; number++)
        {
            // What lies in another's plane shades it or not, as rounding has it; what is under the ground has no pixels.
            var scene = OddScenes.Of(number, coplanar: false, throughGround: false);
            var sun = OddScenes.Sun(number, scene.Cell);
            var pixel = PixelFor(scene.Cell, sun, 40_000);
            var light = LightCases.SunOnly(scene, sun, pixel);
            var tracer = new PeriodicRayTracer(scene);
            var direction = Point3.From(sun).Normalized();
            var areas = scene.SurfaceAreas();
            for (var surface = 0; surface < scene.SurfaceCount; surface++)
            {
                var (pixels, thin) = Projected(scene, surface, direction, pixel * pixel);
                if (thin > 0.2 * areas[surface]) continue;
                var points = new SurfacePoints(scene, surface);
                var seen = 0;
                for (var point = 0; point < Points; point++)
                {
                    var (place, triangle) = points.At(point);
                    if (!tracer.IsBlocked(new Ray(place, direction), triangle)) seen++;
                }

                var (raster, rays, samples) = (light.SunlitShare[surface], seen / (double)Points, (1.0 / Points) + (1 / pixels));
                var share = ((raster * pixels) + seen + 1) / (pixels + Points + 2);
                var error = Math.Sqrt(share * (1 - share) * samples);
                var bound = (4 * error) + (16.0 / 3 * samples) + (thin / areas[surface]);
                var difference = Math.Abs(raster - rays);
                Assert.True(difference < bound, $"scene {number}, surface {surface}: raster {raster}, rays {rays}, bound {bound}");
                worst = Math.Max(worst, difference / bound);
                if (share * Points < 5 || (1 - share) * Points < 5 || thin > 0) continue;
                (chi, compared) = (chi + (difference * difference / (error * error)), compared + 1);
            }
        }

        Assert.InRange(compared, 400, int.MaxValue);
        Assert.InRange(chi / compared, 0, 1 + (4 * Math.Sqrt(2.0 / compared)));
        TestContext.Current.SendDiagnosticMessage($"surfaces {compared}, worst {worst} of its bound, mean square {chi / compared}");
    }

    private static double PixelFor(in Cell cell, Vector3 sun, int pixels) => Math.Sqrt(cell.GroundArea * OddScenes.Rise(sun, cell) / pixels);

    // How many pixels a surface's share of sun is as good as, and the area of triangles with fewer than 16.
    private static (double Pixels, double ThinArea) Projected(Scene scene, int surface, Point3 direction, double pixelArea)
    {
        var (variance, thin, all) = (0.0, 0.0, 0.0);
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            if (scene.SurfaceOfTriangle[triangle] != surface) continue;
            var (a, b, c) = (scene.Corners[3 * triangle], scene.Corners[(3 * triangle) + 1], scene.Corners[(3 * triangle) + 2]);
            var pixels = 0.5 * Math.Abs(Point3.Dot(Point3.Cross(Point3.From(b) - Point3.From(a), Point3.From(c) - Point3.From(a)), direction)) / pixelArea;
            var area = scene.TriangleArea(triangle);
            all += area;
            if (pixels < 16) thin += area;
            else variance += area * area / pixels;
        }

        return (variance > 0 ? all * all / variance : 1, thin);
    }

    // Faces that rays down the sun's direction meet: 2 surface + side, and the ground last.
    private sealed class FaceRays
    {
        private readonly Cell _cell;
        private readonly PeriodicRayTracer _tracer;
        private readonly Point3 _direction;
        private readonly double _way;
        private readonly List<(int Face, BoundingBox Box, Point3 A, Point3 B, Point3 C)> _copies = [];
        private readonly HashSet<int> _met = [];

        public FaceRays(Scene scene, Vector3 sun)
        {
            (_cell, _tracer, _direction) = (scene.Cell, new PeriodicRayTracer(scene), Point3.From(sun).Normalized());
            _way = HeightTolerance / OddScenes.Rise(sun, _cell);
            Certain = new int[(2 * scene.SurfaceCount) + 1];
            Doubtful = new int[Certain.Length];
            for (var triangle = 0; triangle < scene.TriangleCount; triangle++) AddCopies(scene, triangle);
        }

        public int[] Certain { get; }

        public int[] Doubtful { get; }

        public int InDoubt { get; private set; }

        public void Look(double x, double y, double aside, double along)
        {
            _met.Clear();
            Meet(x, y);
            Meet(x - aside, y - along);
            Meet(x - aside, y + along);
            Meet(x + aside, y - along);
            Meet(x + aside, y + along);
            if (_met.Count == 1)
            {
                Certain[_met.Single()]++;
                return;
            }

            InDoubt++;
            foreach (var face in _met) Doubtful[face]++;
        }

        // From 3 m over the slope, higher than anything stands.
        private void Meet(double x, double y)
        {
            var foot = new Point3(x, y, (_cell.RiseAcross * x) + (_cell.RiseAlong * y));
            var ray = new Ray(foot + (3 * _way / HeightTolerance * _direction), -1 * _direction);
            if (_tracer.Closest(ray) is not { } hit)
            {
                _met.Add(Certain.Length - 1);
                return;
            }

            var place = ray.At(hit.Distance);
            if (HeightOf(place) < HeightTolerance) _met.Add(Certain.Length - 1);
            var (i, j) = (Math.Floor(place.X / _cell.Across), Math.Floor(place.Y / _cell.Along));
            var around = ray with { Origin = place - Lattice(i, j) + (_way * _direction) };
            foreach (var copy in _copies)
                if (Contains(copy.Box, around.Origin) && TriangleIntersection.Distance(around, copy.A, copy.B, copy.C) < 2 * _way) _met.Add(copy.Face);
        }

        // A triangle in every cell that it touches or nearly touches.
        private void AddCopies(Scene scene, int triangle)
        {
            var (a, b, c) = (Point3.From(scene.Corners[3 * triangle]), Point3.From(scene.Corners[(3 * triangle) + 1]), Point3.From(scene.Corners[(3 * triangle) + 2]));
            var upper = Point3.Dot(Point3.Cross(b - a, c - a), _direction) > 0;
            var box = BoundingBox.Empty.With(a).With(b).With(c);
            for (var i = Math.Floor((box.Low.X - _way) / _cell.Across); i <= Math.Floor((box.High.X + _way) / _cell.Across); i++)
            {
                for (var j = Math.Floor((box.Low.Y - _way) / _cell.Along); j <= Math.Floor((box.High.Y + _way) / _cell.Along); j++)
                {
                    var shift = Lattice(i, j);
                    _copies.Add(((2 * scene.SurfaceOfTriangle[triangle]) + (upper ? 0 : 1), new BoundingBox(box.Low - shift, box.High - shift), a - shift, b - shift, c - shift));
                }
            }
        }

        private bool Contains(in BoundingBox box, Point3 point) =>
            point.X > box.Low.X - (3 * _way) && point.X < box.High.X + (3 * _way) && point.Y > box.Low.Y - (3 * _way) && point.Y < box.High.Y + (3 * _way);

        private double HeightOf(Point3 point) => point.Z - (_cell.RiseAcross * point.X) - (_cell.RiseAlong * point.Y);

        private Point3 Lattice(double i, double j) => new(
            i * _cell.Across, j * _cell.Along, (i * _cell.Across * _cell.RiseAcross) + (j * _cell.Along * _cell.RiseAlong));
    }
}
