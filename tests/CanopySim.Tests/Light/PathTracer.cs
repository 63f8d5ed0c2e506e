using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Tests.Light;

/// <summary>
/// Photons one by one through the scene by the ray tracer: absorbed, reflected or let through, each time in a new direction by
/// the cosine law, where they hit. Knows no faces, pixels or matrix.
/// </summary>
internal sealed class PathTracer(Scene scene, double leafReflectance, double leafTransmittance, double wood, double ground)
{
    private readonly PeriodicRayTracer _tracer = new(scene);

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

                var place = ray.At(-ray.Origin.Z / ray.Direction.Z);
                (ray, from) = (new Ray(place with { Z = 0 }, Hemisphere.Cosine(up, Next(), Next())), -1);
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

            var sameSide = chance < reflectance;
            var normal = new SurfacePoints(scene, surface).Normal(hit.Triangle);
            if (hit.UpperSide != sameSide) normal = -1 * normal;
            (ray, from) = (new Ray(ray.At(hit.Distance), Hemisphere.Cosine(normal, Next(), Next())), hit.Triangle);
        }
    }
}
