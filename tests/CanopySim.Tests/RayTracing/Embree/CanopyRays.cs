using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Numerics;

namespace CanopySim.Tests.RayTracing.Embree;

/// <summary>Rays as light asks for them: from points spread over the triangles of a scene by area, in the order of the triangles.</summary>
public sealed class CanopyRays
{
    private const ulong Seed = 11;

    // A low morning sun, across and along the row.
    private static readonly Vector3 Sun = Vector3.Normalize(new Vector3(0.6f, 0.35f, 0.5f));

    private readonly Vector3[] _corners;
    private readonly (Vector3 Origin, int Triangle)[] _starts;

    /// <param name="scene">Triangles.</param>
    /// <param name="count">Rays in each set.</param>
    public CanopyRays(Scene scene, int count)
    {
        _corners = scene.Corners;
        _starts = new (Vector3, int)[count];
        var whole = 0.0;
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++) whole += scene.TriangleArea(triangle);
        var (upTo, ray) = (0.0, 0);
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            upTo += scene.TriangleArea(triangle);
            for (; ray < count && (ray + 0.5) * whole < upTo * count; ray++) _starts[ray] = (Point(triangle, ray), triangle);
        }

        for (; ray < count; ray++) _starts[ray] = (Point(scene.TriangleCount - 1, ray), scene.TriangleCount - 1);
    }

    /// <summary>Towards the sun, 36° high.</summary>
    public GivenRay[] ToSun() => [.. _starts.Select(start => From(start, Sun))];

    /// <summary>Straight up, along an axis.</summary>
    public GivenRay[] Overhead() => [.. _starts.Select(start => From(start, Vector3.UnitZ))];

    /// <summary>Over the hemisphere of one side or the other of each triangle, by the cosine law.</summary>
    public GivenRay[] Hemisphere()
    {
        var rays = new GivenRay[_starts.Length];
        for (var ray = 0; ray < rays.Length; ray++)
        {
            var triangle = _starts[ray].Triangle;
            var (a, b, c) = (_corners[3 * triangle], _corners[(3 * triangle) + 1], _corners[(3 * triangle) + 2]);
            var normal = (ray % 2 == 0 ? 1 : -1) * Vector3.Normalize(Vector3.Cross(b - a, c - a));
            var right = Vector3.Normalize(Vector3.Cross(normal, Math.Abs(normal.Z) < 0.9f ? Vector3.UnitZ : Vector3.UnitX));
            var front = Vector3.Cross(normal, right);
            var (u, turn) = (Value("u", ray), 2 * Math.PI * Value("turn", ray));
            var direction = ((float)(Math.Sqrt(u) * Math.Cos(turn)) * right)
                + ((float)(Math.Sqrt(u) * Math.Sin(turn)) * front)
                + ((float)Math.Sqrt(1 - u) * normal);
            rays[ray] = From(_starts[ray], Vector3.Normalize(direction));
        }

        return rays;
    }

    private static GivenRay From((Vector3 Origin, int Triangle) start, Vector3 direction) =>
        new(start.Origin, direction, float.PositiveInfinity, start.Triangle);

    private static double Value(string purpose, int ray) => SeededValue.Uniform(Seed, purpose, ray);

    private Vector3 Point(int triangle, int ray)
    {
        var (a, b, c) = (_corners[3 * triangle], _corners[(3 * triangle) + 1], _corners[(3 * triangle) + 2]);
        var (root, share) = (Math.Sqrt(Value("root", ray)), Value("share", ray));
        return a + ((float)(root * (1 - share)) * (b - a)) + ((float)(root * share) * (c - a));
    }
}
