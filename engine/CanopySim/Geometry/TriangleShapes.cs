using System.Numerics;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Training;

namespace CanopySim.Geometry;

/// <summary>Makes triangles of a canopy's organs, surface by surface.</summary>
internal sealed class TriangleShapes(
    SceneDetail detail, PermanentWood wood, Cell cell, RowLayout rows) : ICanopyShapes
{
    // Axes for light: one piece for so many internodes.
    private const int InternodesPerPiece = 4;

    private readonly TriangleList _triangles = new();
    private readonly List<Leaf?> _leaves = [];
    private readonly List<Vector3> _centers = [];
    private readonly List<double> _areas = [];

    // A shoot's petioles and laterals make one surface: they catch light that leaves would get, but nobody asks for each of theirs.
    private int _stalks;

    public PlacedCanopy Build() => new(_triangles.Build(cell), _leaves, _centers, _areas);

    public void Vine(Vine vine)
    {
        _triangles.Row = rows.RowOf(vine.Id);
        _triangles.Begin(SurfaceKind.Wood);
        wood.Add(_triangles, vine, cell);
        Register(null, default, 0);
    }

    public void Shoot(Shoot shoot, Vector3[] points)
    {
        _stalks = _triangles.Begin(SurfaceKind.Wood);
        var pieces = detail == SceneDetail.Drawn ? 1 : InternodesPerPiece;
        for (var i = 0; i < points.Length - 1; i += pieces)
        {
            var next = Math.Min(points.Length - 1, i + pieces);
            _triangles.AddTube(points[i], points[next], ShootRadius.At(i, points.Length), ShootRadius.At(next, points.Length), 3);
        }

        Register(null, default, 0);
        if (detail != SceneDetail.ForLight) return;
        _stalks = _triangles.Begin(SurfaceKind.Stalk);
        Register(null, default, 0);
    }

    public void Stalk(Vector3 from, Vector3 to, float radius, int index)
    {
        _triangles.Continue(_stalks);
        if (detail == SceneDetail.Drawn) _triangles.AddTube(from, to, radius, radius, 3);
        else _triangles.AddStrip(from, to, radius, (float)GoldenAngle.Radians * index);
    }

    public void Blade(Leaf leaf, in BladeFrame frame)
    {
        _triangles.Begin(SurfaceKind.Blade, leaf.Id.Value);
        var mesh = detail == SceneDetail.Drawn ? BladeMesh.Drawn : BladeMesh.ForLight;
        var scale = (float)Math.Sqrt(leaf.Area);
        for (var corner = 0; corner < mesh.Corners.Length; corner += 3)
        {
            _triangles.Add(
                frame.CellFromBlade(mesh.Corners[corner], scale),
                frame.CellFromBlade(mesh.Corners[corner + 1], scale),
                frame.CellFromBlade(mesh.Corners[corner + 2], scale));
        }

        Register(leaf, CanopyPlaces.BladeMiddle(leaf, frame), leaf.Area);
    }

    public void Cluster(Vector3 top, float length, float radius)
    {
        _triangles.Begin(SurfaceKind.Cluster);
        _triangles.AddSpindle(top, length, radius);
        Register(null, default, 0);
    }

    private void Register(Leaf? leaf, Vector3 center, double area)
    {
        _leaves.Add(leaf);
        _centers.Add(center);
        _areas.Add(area);
    }
}

/// <summary>How thick a shoot is at each of its points. Common practice, no source.</summary>
internal static class ShootRadius
{
    private const float Base = 0.0045f;
    private const float Tip = 0.002f;

    /// <summary>Radius at a point, counted from the base, of so many points [m].</summary>
    public static float At(int point, int points) => Base + ((Tip - Base) * point / Math.Max(1, points - 1));
}
