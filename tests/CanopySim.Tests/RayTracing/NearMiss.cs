using System.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Tests.RayTracing;

/// <summary>How near to undecided a question is: two tracers may differ about a ray that passes the rim of a triangle.</summary>
internal static class NearMiss
{
    /// <summary>
    /// The least distance [m] between a ray's line and the edges of a triangle, in double precision. Both tracers of a pair must answer
    /// alike where it is more than the rounding of coordinates.
    /// </summary>
    public static double ToRim(Vector3[] corners, int triangle, Vector3 origin, Vector3 direction)
    {
        var least = double.PositiveInfinity;
        var (start, way) = (Point3.From(origin), Point3.From(direction));
        for (var corner = 0; corner < 3; corner++)
        {
            var (a, b) = (Point3.From(corners[(3 * triangle) + corner]), Point3.From(corners[(3 * triangle) + ((corner + 1) % 3)]));
            least = Math.Min(least, LineToSegment(start, way, a, b));
        }

        return least;
    }

    private static double LineToSegment(Point3 start, Point3 way, Point3 a, Point3 b)
    {
        // Seen along the line, the distance is that of a point to a segment in a plane.
        var unit = way.Normalized();
        var (p, q) = (Across(a - start, unit), Across(b - start, unit));
        var along = q - p;
        var length = Point3.Dot(along, along);
        var share = length > 0 ? Math.Clamp(-Point3.Dot(p, along) / length, 0, 1) : 0;
        var nearest = p + (share * along);
        return Math.Sqrt(Point3.Dot(nearest, nearest));
    }

    private static Point3 Across(Point3 vector, Point3 unit) => vector - (Point3.Dot(vector, unit) * unit);
}
