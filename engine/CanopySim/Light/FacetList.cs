using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// A scene's triangles put together into flat convex facets of up to five corners: a lobe of a blade, a side of a tube. A facet is
/// projected once where its triangles would be three times, and its rows of pixels are not cut up.
/// </summary>
internal sealed class FacetList
{
    public const int MaximumCorners = 5;

    // Corners this near to a facet's plane lie in it [m]: far below a pixel, far above the rounding of coordinates.
    private const float Flatness = 1e-5f;

    // Farther off a row of fine pixels has no number of its own in single precision [m].
    private const float Farthest = 1e4f;

    // A triangle joins one of the last facets of its surface; blades are made left and right in turn.
    private const int OpenFacets = 4;

    private readonly Vector3[] _corners;
    private readonly Vector3[] _normals;
    private readonly int[] _cornerCounts;

    public FacetList(Scene scene)
        : this(scene, 0, scene.TriangleCount)
    {
    }

    /// <summary>Facets of a run of triangles. Where it ends with a surface's, runs make the same facets as all at once.</summary>
    public FacetList(Scene scene, int firstTriangle, int endTriangle)
    {
        var triangles = endTriangle - firstTriangle;
        _corners = new Vector3[MaximumCorners * triangles];
        _normals = new Vector3[triangles];
        _cornerCounts = new int[triangles];
        Surfaces = new int[triangles];
        var firstOfSurface = 0;
        for (var triangle = firstTriangle; triangle < endTriangle; triangle++)
        {
            var corners = scene.Corners.AsSpan(3 * triangle, 3);
            var normal = Vector3.Cross(corners[1] - corners[0], corners[2] - corners[0]);
            if (!float.IsFinite(normal.LengthSquared())) throw new ArgumentException($"triangle {triangle} has a corner that is not a number");
            foreach (var corner in corners)
                if (Math.Max(Math.Abs(corner.X), Math.Abs(corner.Y)) > Farthest) throw new ArgumentException($"triangle {triangle} lies more than {Farthest:0} m off the origin");
            if (normal.LengthSquared() == 0) continue;
            normal = Vector3.Normalize(normal);
            var surface = scene.SurfaceOfTriangle[triangle];
            if (Count > 0 && Surfaces[Count - 1] != surface) firstOfSurface = Count;
            var joined = false;
            for (var facet = Count - 1; facet >= Math.Max(firstOfSurface, Count - OpenFacets) && !joined; facet--)
                joined = TryJoin(facet, corners, normal);
            if (joined) continue;
            corners.CopyTo(_corners.AsSpan(MaximumCorners * Count));
            (_normals[Count], _cornerCounts[Count], Surfaces[Count]) = (normal, 3, surface);
            Count++;
        }
    }

    public int Count { get; private set; }

    /// <summary>Surface of each facet; those of no facet follow.</summary>
    public int[] Surfaces { get; }

    /// <summary>A facet's corners in right-handed order [m].</summary>
    public ReadOnlySpan<Vector3> Corners(int facet) => _corners.AsSpan(MaximumCorners * facet, _cornerCounts[facet]);

    // Across a common edge, if the corner beyond it lies in the plane and leaves the facet convex.
    private bool TryJoin(int facet, ReadOnlySpan<Vector3> triangle, Vector3 normal)
    {
        var count = _cornerCounts[facet];
        if (count == MaximumCorners || Vector3.Dot(normal, _normals[facet]) < 0.5f) return false;
        var corners = _corners.AsSpan(MaximumCorners * facet, MaximumCorners);
        for (var side = 0; side < 3; side++)
        {
            var (from, to, beyond) = (triangle[(side + 1) % 3], triangle[side], triangle[(side + 2) % 3]);
            var at = corners[..count].IndexOf(from);
            if (at < 0 || corners[(at + 1) % count] != to) continue;
            if (MathF.Abs(Vector3.Dot(beyond - from, _normals[facet])) > Flatness) return false;
            var (before, after) = (corners[(at + count - 1) % count], corners[(at + 2) % count]);
            if (!TurnsLeft(before, from, beyond, facet) || !TurnsLeft(from, beyond, to, facet) || !TurnsLeft(beyond, to, after, facet)) return false;
            corners[(at + 1)..count].CopyTo(corners[(at + 2)..]);
            corners[at + 1] = beyond;
            _cornerCounts[facet]++;
            return true;
        }

        return false;
    }

    private bool TurnsLeft(Vector3 a, Vector3 b, Vector3 c, int facet) => Vector3.Dot(Vector3.Cross(b - a, c - b), _normals[facet]) >= 0;
}
