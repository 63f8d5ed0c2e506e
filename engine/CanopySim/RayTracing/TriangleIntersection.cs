namespace CanopySim.RayTracing;

/// <summary>Ray against triangle.</summary>
public static class TriangleIntersection
{
    /// <summary>
    /// Distance [m] at which a ray meets a triangle from either side, or null. Möller &amp; Trumbore 1997,
    /// doi:10.1080/10867651.1997.10487468, in double precision without a threshold on the determinant: only a ray in the
    /// triangle's plane, or a triangle without area, has none.
    /// </summary>
    public static double? Distance(in Ray ray, Point3 a, Point3 b, Point3 c)
    {
        var (edge1, edge2) = (b - a, c - a);
        var p = Point3.Cross(ray.Direction, edge2);
        var determinant = Point3.Dot(edge1, p);
        if (determinant == 0) return null;
        var toOrigin = ray.Origin - a;
        var u = Point3.Dot(toOrigin, p) / determinant;
        if (!(u >= 0 && u <= 1)) return null;
        var q = Point3.Cross(toOrigin, edge1);
        var v = Point3.Dot(ray.Direction, q) / determinant;
        if (!(v >= 0 && u + v <= 1)) return null;
        var distance = Point3.Dot(edge2, q) / determinant;
        return distance >= 0 ? distance : null;
    }
}
