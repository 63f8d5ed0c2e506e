using System.Numerics;

namespace CanopySim.Geometry;

/// <summary>Collects triangles and surfaces for a scene.</summary>
public sealed class TriangleList
{
    private readonly List<Vector3> _corners = [];
    private readonly List<int> _surfaces = [];
    private readonly List<SurfaceKind> _kinds = [];
    private readonly List<int> _leafIds = [];
    private readonly List<int> _rows = [];
    private int _surface;

    /// <summary>Number of the row to which the surfaces that are begun from now on belong.</summary>
    public int Row { get; set; }

    /// <summary>Begins a surface and returns its number; the triangles that follow belong to it.</summary>
    public int Begin(SurfaceKind kind, int leafId = -1)
    {
        _kinds.Add(kind);
        _leafIds.Add(leafId);
        _rows.Add(Row);
        return _surface = _kinds.Count - 1;
    }

    /// <summary>Goes back to a surface begun before.</summary>
    public void Continue(int surface) => _surface = surface;

    public void Add(Vector3 a, Vector3 b, Vector3 c)
    {
        _corners.AddRange([a, b, c]);
        _surfaces.Add(_surface);
    }

    /// <summary>
    /// A tube without ends around a line, its sides flat and as wide together as the round one's: from all sides it
    /// shadows as much, since the mean shadow of a convex body goes by its surface (Cauchy 1832, from memory).
    /// </summary>
    public void AddTube(Vector3 from, Vector3 to, float fromRadius, float toRadius, int sides)
    {
        var widening = MathF.PI / (sides * MathF.Sin(MathF.PI / sides));
        (fromRadius, toRadius) = (widening * fromRadius, widening * toRadius);
        var along = to - from;
        if (along.LengthSquared() < 1e-12f) return;
        var (right, front) = Around(Vector3.Normalize(along));
        for (var side = 0; side < sides; side++)
        {
            var (p, q) = (Spoke(side), Spoke(side + 1));
            Add(from + (fromRadius * p), from + (fromRadius * q), to + (toRadius * q));
            Add(from + (fromRadius * p), to + (toRadius * q), to + (toRadius * p));
        }

        Vector3 Spoke(int side)
        {
            var angle = 2 * MathF.PI * side / sides;
            return (MathF.Cos(angle) * right) + (MathF.Sin(angle) * front);
        }
    }

    /// <summary>
    /// A flat strip in place of a thin round stalk, as wide as half the stalk's girth: turned this way and that it
    /// shadows as much.
    /// </summary>
    /// <param name="from">One end [m].</param>
    /// <param name="to">The other.</param>
    /// <param name="radius">Radius of the stalk [m].</param>
    /// <param name="turn">Where around its line the strip faces [rad].</param>
    public void AddStrip(Vector3 from, Vector3 to, float radius, float turn)
    {
        var along = to - from;
        if (along.LengthSquared() < 1e-12f) return;
        var (right, front) = Around(Vector3.Normalize(along));
        var half = 0.5f * MathF.PI * radius * ((MathF.Cos(turn) * right) + (MathF.Sin(turn) * front));
        Add(from - half, to - half, to + half);
        Add(from - half, to + half, from + half);
    }

    /// <summary>A closed spindle of six sides and four rings' worth of faces hanging from a point.</summary>
    public void AddSpindle(Vector3 top, float length, float radius)
    {
        const int Sides = 6;
        (float Down, float Radius)[] rings = [(0.30f, 1f), (0.65f, 0.75f)];
        var bottom = top - (length * Vector3.UnitZ);
        for (var side = 0; side < Sides; side++)
        {
            var (upperA, upperB) = (Point(rings[0], side), Point(rings[0], side + 1));
            var (lowerA, lowerB) = (Point(rings[1], side), Point(rings[1], side + 1));
            Add(top, upperA, upperB);
            Add(upperA, lowerA, lowerB);
            Add(upperA, lowerB, upperB);
            Add(lowerA, bottom, lowerB);
        }

        Vector3 Point((float Down, float Radius) ring, int side)
        {
            var angle = 2 * MathF.PI * side / Sides;
            var wide = radius * ring.Radius;
            return top + new Vector3(wide * MathF.Cos(angle), wide * MathF.Sin(angle), -ring.Down * length);
        }
    }

    private static (Vector3 Right, Vector3 Front) Around(Vector3 along)
    {
        var right = Vector3.Normalize(Vector3.Cross(along, MathF.Abs(along.Z) < 0.9f ? Vector3.UnitZ : Vector3.UnitX));
        return (right, Vector3.Cross(along, right));
    }

    public Scene Build(Cell cell) => new()
    {
        Cell = cell,
        Corners = [.. _corners],
        SurfaceOfTriangle = [.. _surfaces],
        Kinds = [.. _kinds],
        LeafIds = [.. _leafIds],
        Rows = [.. _rows],
    };
}
