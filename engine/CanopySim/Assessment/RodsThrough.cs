using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Assessment;

/// <summary>What rods meet in a scene that repeats across and along the row.</summary>
internal sealed class RodsThrough
{
    private readonly Scene _scene;
    private readonly TrianglesAlong _near;
    private readonly Vector3 _low;
    private readonly Vector3 _high;

    public RodsThrough(Scene scene)
    {
        (_scene, _near) = (scene, new TrianglesAlong(scene));
        foreach (var corner in scene.Corners) (_low, _high) = (Vector3.Min(_low, corner), Vector3.Max(_high, corner));
    }

    /// <summary>Leaves and clusters that a rod square to the row meets, once each, in the order met.</summary>
    public List<SurfaceKind> Contacts(in QuadratRod rod)
    {
        var (origin, direction, length, _) = rod;
        var nearest = new Dictionary<(int Surface, int Across, int Along), float>();
        var cell = _scene.Cell;
        var end = direction.X == 0 ? origin.X : origin.X + (length * direction.X);
        var (firstAcross, lastAcross) = Copies(origin.X, end, _low.X, _high.X, cell.Across);
        var (firstAlong, lastAlong) = Copies(origin.Y, origin.Y, _low.Y, _high.Y, cell.Along);
        for (var i = firstAcross; i <= lastAcross; i++)
        {
            for (var j = firstAlong; j <= lastAlong; j++)
            {
                var (across, along) = (i * cell.Across, j * cell.Along);
                var rise = (across * cell.RiseAcross) + (along * cell.RiseAlong);
                var shifted = origin - new Vector3((float)across, (float)along, (float)rise);
                foreach (var triangle in _near.At(shifted.Y))
                {
                    if (Distance(_scene, triangle, shifted, direction) is not { } distance || distance > length)
                        continue;
                    var key = (_scene.SurfaceOfTriangle[triangle], i, j);
                    nearest[key] = Math.Min(distance, nearest.GetValueOrDefault(key, float.MaxValue));
                }
            }
        }

        return [.. nearest.OrderBy(pair => pair.Value).ThenBy(pair => pair.Key)
            .Select(pair => _scene.Kinds[pair.Key.Surface])];
    }

    // Numbers of the copies of the cell that reach into a stretch, which runs up.
    private static (int First, int Last) Copies(double from, double to, double low, double high, double period) =>
        ((int)Math.Ceiling((from - high) / period), (int)Math.Floor((to - low) / period));

    // Möller & Trumbore 1997, doi:10.1080/10867651.1997.10487468.
    private static float? Distance(Scene scene, int triangle, Vector3 origin, Vector3 direction)
    {
        var corner = scene.Corners[3 * triangle];
        var (edge1, edge2) = (scene.Corners[(3 * triangle) + 1] - corner, scene.Corners[(3 * triangle) + 2] - corner);
        var p = Vector3.Cross(direction, edge2);
        var determinant = Vector3.Dot(edge1, p);
        if (Math.Abs(determinant) < 1e-12f) return null;
        var from = origin - corner;
        var u = Vector3.Dot(from, p) / determinant;
        if (u is < 0 or > 1) return null;
        var q = Vector3.Cross(from, edge1);
        var v = Vector3.Dot(direction, q) / determinant;
        if (v < 0 || u + v > 1) return null;
        var distance = Vector3.Dot(edge2, q) / determinant;
        return distance > 0 ? distance : null;
    }
}
