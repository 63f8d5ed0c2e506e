using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Tests.Light;

/// <summary>
/// Photons one by one through the scene by the ray tracer: absorbed, reflected or let through, each time in a new direction by
/// the cosine law. Knows no pixels and no matrix. A photon goes on from where it hit; or, with <paramref name="evenFaces"/>, from
/// anywhere on that face, or on that strip of ground, as radiosity has it.
/// </summary>
internal sealed class PathTracer(
    Scene scene, double leafReflectance, double leafTransmittance, double wood, double ground, bool evenFaces = false)
{
    private const int GroundStrips = 12;

    private readonly PeriodicRayTracer _tracer = new(scene);
    private readonly SurfacePoints[] _points = [.. Enumerable.Range(0, scene.SurfaceCount).Select(surface => new SurfacePoints(scene, surface))];

    public int[] AbsorbedBySurface { get; } = new int[scene.SurfaceCount];

    public int AbsorbedByGround { get; private set; }

    public int Reflected { get; private set; }

    /// <param name="photons">How many.</param>
    /// <param name="sun">Where they come from; null for a uniform sky.</param>
    public void Run(int photons, Vector3? sun)
    {
        for (var photon = 0; photon < photons; photon++) Follow(photon, sun);
    }

    private void Follow(int photon, Vector3? sun)
    {
        var draw = 0;
        double Next() => SeededValue.Uniform(77, "photon", photon, draw++);
        var up = new Point3(0, 0, 1);
        var towards = sun is { } direction ? Point3.From(direction).Normalized() : Hemisphere.Cosine(up, Next(), Next());
        var foot = new Point3(Next() * scene.Cell.Across, Next() * scene.Cell.Along, 0);
        var ray = new Ray(foot + (3 / towards.Z * towards), -1 * towards);
        var from = -1;
        while (true)
        {
            if (_tracer.Closest(ray, from) is not { } hit)
            {
                if (ray.Direction.Z > 0)
                {
                    Reflected++;
                    return;
                }

                if (Next() >= ground)
                {
                    AbsorbedByGround++;
                    return;
                }

                var place = ray.At(-ray.Origin.Z / ray.Direction.Z) with { Z = 0 };
                if (evenFaces)
                {
                    var strip = scene.Cell.Across / GroundStrips;
                    place = new Point3((Math.Floor(place.X / strip) + Next()) * strip, Next() * scene.Cell.Along, 0);
                }

                (ray, from) = (new Ray(place, Hemisphere.Cosine(up, Next(), Next())), -1);
                continue;
            }

            var surface = scene.SurfaceOfTriangle[hit.Triangle];
            var blade = scene.Kinds[surface] == SurfaceKind.Blade;
            var reflectance = blade ? leafReflectance : hit.UpperSide ? wood : 0;
            var chance = Next();
            if (chance >= reflectance + (blade ? leafTransmittance : 0))
            {
                AbsorbedBySurface[surface]++;
                return;
            }

            var upperSide = (chance < reflectance) == hit.UpperSide;
            var points = _points[surface];
            var (start, triangle) = evenFaces ? points.At((int)(Next() * int.MaxValue)) : (ray.At(hit.Distance), hit.Triangle);
            var normal = (upperSide ? 1 : -1) * points.Normal(triangle);
            (ray, from) = (new Ray(start, Hemisphere.Cosine(normal, Next(), Next())), triangle);
        }
    }
}
