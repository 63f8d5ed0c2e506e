using System.Numerics;

namespace CanopySim.Geometry;

/// <summary>Collects triangles and surfaces for a scene.</summary>
public sealed class TriangleList
{
    private readonly List<Vector3> _corners = [];
    private readonly List<int> _surfaces = [];
    private readonly List<SurfaceKind> _kinds = [];
    private readonly List<int> _leafIds = [];

    /// <summary>Begins a surface; the triangles that follow belong to it.</summary>
    public void Begin(SurfaceKind kind, int leafId = -1)
    {
        _kinds.Add(kind);
        _leafIds.Add(leafId);
    }

    public void Add(Vector3 a, Vector3 b, Vector3 c)
    {
        _corners.AddRange([a, b, c]);
        _surfaces.Add(_kinds.Count - 1);
    }

    /// <summary>A tube without ends around a line, its sides flat.</summary>
    public void AddTube(Vector3 from, Vector3 to, float fromRadius, float toRadius, int sides)
    {
        var along = to - from;
        if (along.LengthSquared() < 1e-12f) return;
        along = Vector3.Normalize(along);
        var right = Vector3.Normalize(Vector3.Cross(along, MathF.Abs(along.Z) < 0.9f ? Vector3.UnitZ : Vector3.UnitX));
        var front = Vector3.Cross(along, right);
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
            return top + new Vector3(radius * ring.Radius * MathF.Cos(angle), radius * ring.Radius * MathF.Sin(angle), -ring.Down * length);
        }
    }

    public Scene Build(Cell cell) => new()
    {
        Cell = cell,
        Corners = [.. _corners],
        SurfaceOfTriangle = [.. _surfaces],
        Kinds = [.. _kinds],
        LeafIds = [.. _leafIds],
    };
}
