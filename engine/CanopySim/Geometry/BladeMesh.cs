using System.Numerics;

namespace CanopySim.Geometry;

/// <summary>
/// A lobed blade folded along its midrib, in its own frame: origin at the petiole, u to the right, v along the midrib
/// to the tip, w up from the upper side; unit one-sided area, to be scaled by the root of the area. One outline of
/// ours, in two
/// meshes: for drawing, and for light.
/// </summary>
public sealed class BladeMesh
{
    // Each half is lifted by this angle from the plane of the blade [rad]. Assumed.
    private const float Fold = 0.26f;

    // Right half of the outline, base to tip: two lobes with a sinus between and an open petiolar sinus. Assumed.
    private static readonly Vector2[] HalfOutline =
    [
        new(0, 0), new(0.16f, -0.14f), new(0.42f, -0.06f), new(0.55f, 0.22f), new(0.36f, 0.34f), new(0.46f, 0.62f),
            new(0.20f, 0.64f), new(0, 1),
    ];

    private static readonly Vector2[] Midrib = [new(0, 0), new(0, 0.35f)];

    private BladeMesh(Vector3[] corners) => Corners = corners;

    /// <summary>Fourteen triangles.</summary>
    public static BladeMesh Drawn { get; } = Build(
    [
        (Midrib[0], HalfOutline[1], HalfOutline[2]),
        (Midrib[0], HalfOutline[2], HalfOutline[3]),
        (Midrib[0], HalfOutline[3], HalfOutline[4]),
        (Midrib[0], HalfOutline[4], Midrib[1]),
        (Midrib[1], HalfOutline[4], HalfOutline[5]),
        (Midrib[1], HalfOutline[5], HalfOutline[6]),
        (Midrib[1], HalfOutline[6], HalfOutline[7]),
    ]);

    /// <summary>
    /// Twelve triangles of the same outline, in the order that lets light put each half together into three convex
    /// facets. Without the sinuses a leaf's day would be 2 to 5 % off and the canopy 0.3 % too bright.
    /// </summary>
    public static BladeMesh ForLight { get; } = Build(
    [
        (HalfOutline[0], HalfOutline[1], HalfOutline[2]),
        (HalfOutline[0], HalfOutline[2], HalfOutline[3]),
        (HalfOutline[0], HalfOutline[3], HalfOutline[4]),
        (HalfOutline[0], HalfOutline[4], HalfOutline[5]),
        (HalfOutline[0], HalfOutline[5], HalfOutline[6]),
        (HalfOutline[0], HalfOutline[6], HalfOutline[7]),
    ]);

    /// <summary>Corners, three a triangle, in right-handed order seen from the upper side.</summary>
    public Vector3[] Corners { get; }

    public int TriangleCount => Corners.Length / 3;

    private static BladeMesh Build((Vector2 A, Vector2 B, Vector2 C)[] rightHalf)
    {
        var corners = new List<Vector3>();
        foreach (var (a, b, c) in rightHalf)
        {
            corners.AddRange([Folded(a, 1), Folded(b, 1), Folded(c, 1)]);
            corners.AddRange([Folded(a, -1), Folded(c, -1), Folded(b, -1)]);
        }

        var area = 0f;
        for (var i = 0; i < corners.Count; i += 3)
            area += 0.5f * Vector3.Cross(corners[i + 1] - corners[i], corners[i + 2] - corners[i]).Length();
        var scale = 1 / MathF.Sqrt(area);
        return new BladeMesh([.. corners.Select(corner => corner * scale)]);
    }

    private static Vector3 Folded(Vector2 point, int side) =>
        new(side * point.X * MathF.Cos(Fold), point.Y, point.X * MathF.Sin(Fold));
}
