using System.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Light;

/// <summary>
/// What stands in the way of a sensor's rays. The only place where sensors meet the ray tracer; the raster knows faces as a
/// whole and not what a point sees.
/// </summary>
internal sealed class SensorView(LightGeometry geometry)
{
    /// <summary>Target of a ray that ends where no light comes from.</summary>
    public const int Dark = int.MinValue;

    // A ray flatter to the slope than this is traced as if it had this much rise, as low suns are.
    private const double LeastRise = 1e-3;

    // Ground within rounding: a sensor that lies on it is not buried.
    private const double GroundTolerance = 1e-6;

    private readonly WidePeriodicTracer _tracer = new(geometry.Scene);

    /// <summary>Where each ray ends: a node, ~d for direction d of the sky, or <see cref="Dark"/>. Under the ground all is dark.</summary>
    public int[] Targets(Point3 point, Point3[] rays)
    {
        var targets = new int[rays.Length];
        if (OverGround(point) is not { } origin)
        {
            targets.AsSpan().Fill(Dark);
            return targets;
        }

        for (var ray = 0; ray < rays.Length; ray++) targets[ray] = Target(new Ray(origin, Lifted(rays[ray])));
        return targets;
    }

    /// <summary>Whether the sun reaches a point; never from behind the hillside.</summary>
    public bool SeesSun(Point3 point, Vector3 sun)
    {
        var direction = Point3.From(sun);
        return sun.Z > 0 && Rise(direction) > 0 && OverGround(point) is { } origin
            && !_tracer.IsBlocked(new Ray(origin, Lifted(direction)));
    }

    /// <summary>The direction of the sky nearest to one in the open, as a target; <see cref="Dark"/> below the horizon.</summary>
    public int SkyTarget(Point3 direction)
    {
        if (direction.Z <= 0) return Dark;
        var (best, nearest, directions) = (Dark, double.NegativeInfinity, geometry.Sky.Directions);
        for (var index = 0; index < directions.Count; index++)
        {
            if (directions[index].Z <= 0) continue;
            var cosine = Point3.Dot(Point3.From(directions[index]), direction);
            if (cosine > nearest) (best, nearest) = (~index, cosine);
        }

        return best;
    }

    private int Target(Ray ray)
    {
        if (_tracer.Closest(ray) is { } hit)
        {
            // Whoever looks at the inside of a closed body is in it, and there it is dark.
            var node = (2 * geometry.Scene.SurfaceOfTriangle[hit.Triangle]) + (hit.UpperSide ? 0 : 1);
            return geometry.Nodes.IsInside(node) ? Dark : node;
        }

        var rise = Rise(ray.Direction);
        if (rise > 0) return SkyTarget(ray.Direction);
        var across = ray.At(Rise(ray.Origin) / -rise).X / geometry.Scene.Cell.Across;
        return geometry.Nodes.GroundAt(across - Math.Floor(across));
    }

    private Point3? OverGround(Point3 point)
    {
        var height = Rise(point);
        return height < -GroundTolerance ? null : point with { Z = point.Z + Math.Max(0, -height) };
    }

    private Point3 Lifted(Point3 direction)
    {
        var rise = Rise(direction);
        return Math.Abs(rise) >= LeastRise ? direction : direction with { Z = direction.Z - rise + (rise < 0 ? -LeastRise : LeastRise) };
    }

    // Of a point: its height over the ground [m]; of a direction: its rise over the slope.
    private double Rise(Point3 of) => of.Z - (geometry.Scene.Cell.RiseAcross * of.X) - (geometry.Scene.Cell.RiseAlong * of.Y);
}
