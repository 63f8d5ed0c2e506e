using CanopySim.Geometry;
using CanopySim.Numerics;
using CanopySim.RayTracing;

namespace CanopySim.Tests.Light;

/// <summary>Points spread evenly over the area of one surface.</summary>
internal sealed class SurfacePoints
{
    private readonly Scene _scene;
    private readonly int _surface;
    private readonly int[] _triangles;
    private readonly double[] _upTo;

    public SurfacePoints(Scene scene, int surface)
    {
        (_scene, _surface) = (scene, surface);
        _triangles = [.. Enumerable.Range(0, scene.TriangleCount).Where(triangle => scene.SurfaceOfTriangle[triangle] == surface)];
        _upTo = new double[_triangles.Length];
        for (var (i, sum) = (0, 0.0); i < _triangles.Length; i++) _upTo[i] = sum += scene.TriangleArea(_triangles[i]);
    }

    public (Point3 Place, int Triangle) At(int index)
    {
        double Value(string purpose) => SeededValue.Uniform(31, purpose, _surface, index);
        var area = Value("triangle") * _upTo[^1];
        var triangle = _triangles[Array.FindIndex(_upTo, limit => area < limit)];
        var (a, b, c) = (Corner(triangle, 0), Corner(triangle, 1), Corner(triangle, 2));
        var (root, share) = (Math.Sqrt(Value("u")), Value("v"));
        return (a + (root * (1 - share) * (b - a)) + (root * share * (c - a)), triangle);
    }

    public Point3 Normal(int triangle)
    {
        var (a, b, c) = (Corner(triangle, 0), Corner(triangle, 1), Corner(triangle, 2));
        return Point3.Cross(b - a, c - a).Normalized();
    }

    private Point3 Corner(int triangle, int corner) => Point3.From(_scene.Corners[(3 * triangle) + corner]);
}

/// <summary>Directions over a hemisphere.</summary>
internal static class Hemisphere
{
    /// <summary>Direction about a normal, weighted with the cosine, from two uniform values (Malley's method).</summary>
    public static Point3 Cosine(Point3 normal, double u, double v)
    {
        var side = Point3.Cross(normal, Math.Abs(normal.Z) < 0.9 ? new Point3(0, 0, 1) : new Point3(1, 0, 0)).Normalized();
        var other = Point3.Cross(normal, side);
        var (sine, cosine) = Math.SinCos(2 * Math.PI * v);
        return ((Math.Sqrt(u) * cosine * side) + (Math.Sqrt(u) * sine * other) + (Math.Sqrt(1 - u) * normal)).Normalized();
    }
}
