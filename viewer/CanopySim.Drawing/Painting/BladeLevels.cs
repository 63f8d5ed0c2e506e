using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// A blade of few triangles with what to draw of a canopy with it: every blade, or every so manieth, larger.
/// </summary>
/// <param name="Points">Corners of the unit blade, each half with its own.</param>
/// <param name="Normals">Normal at each corner: a half is flat.</param>
/// <param name="Indices">Three a triangle.</param>
/// <param name="Step">Every so manieth blade is drawn.</param>
internal sealed record BladeLevel(Vector3[] Points, Vector3[] Normals, ushort[] Indices, int Step)
{
    /// <summary>Blades that are left out lend their area to those drawn.</summary>
    public float Swell => MathF.Sqrt(Step);

    public int TriangleCount => Indices.Length / 3;
}

/// <summary>The blade at falling detail: as recorded, and three plainer ones of the same area.</summary>
internal static class BladeLevels
{
    // Right halves of plainer outlines, base to tip, of no particular size: each is scaled to the drawn blade's area.
    // Assumed.
    private static readonly Vector2[] Lobed =
        [new(0, 0), new(0.28f, -0.10f), new(0.54f, 0.20f), new(0.35f, 0.36f), new(0.42f, 0.63f), new(0, 1)];
    private static readonly Vector2[] Diamond = [new(0, -0.04f), new(0.52f, 0.30f), new(0, 1)];

    // As in BladeMesh: each half is lifted by so much [rad].
    private const float Fold = 0.26f;

    /// <summary>From near to far.</summary>
    public static IReadOnlyList<BladeLevel> All { get; } =
    [
        AsDrawn(), Plain(Lobed, 1), Plain(Diamond, 1), Plain(Diamond, 3), Plain(Diamond, 8),
    ];

    private static BladeLevel AsDrawn() => Indexed(BladeMesh.Drawn.Corners, 1, isFolded: true);

    private static BladeLevel Plain(Vector2[] half, int step)
    {
        var corners = new List<Vector3>();
        for (var i = 1; i < half.Length - 1; i++)
        {
            // A fan around the middle of the midrib would leave the base open; around the base it crosses the sinus a
            // little.
            var (a, b, c) = (half[0], half[i], half[i + 1]);
            corners.AddRange([Folded(a, 1), Folded(b, 1), Folded(c, 1), Folded(a, -1), Folded(c, -1), Folded(b, -1)]);
        }

        var area = 0f;
        for (var i = 0; i < corners.Count; i += 3)
            area += 0.5f * Vector3.Cross(corners[i + 1] - corners[i], corners[i + 2] - corners[i]).Length();
        var scale = 1 / MathF.Sqrt(area);
        return Indexed([.. corners.Select(corner => scale * corner)], step, isFolded: false);
    }

    private static Vector3 Folded(Vector2 point, int side) =>
        new(side * point.X * MathF.Cos(Fold), point.Y, point.X * MathF.Sin(Fold));

    // Corners that lie together in the same half become one; where the fold does not show, those of both halves.
    private static BladeLevel Indexed(IReadOnlyList<Vector3> corners, int step, bool isFolded)
    {
        List<Vector3> points = [];
        List<Vector3> normals = [];
        List<ushort> indices = [];
        Dictionary<(Vector3 Point, bool Right), ushort> known = [];
        for (var i = 0; i < corners.Count; i += 3)
        {
            var normal = Vector3.Normalize(Vector3.Cross(corners[i + 1] - corners[i], corners[i + 2] - corners[i]));
            var right = isFolded && normal.X < 0;
            if (!isFolded) normal = Vector3.UnitZ;
            for (var corner = i; corner < i + 3; corner++)
            {
                if (!known.TryGetValue((corners[corner], right), out var index))
                {
                    known[(corners[corner], right)] = index = (ushort)points.Count;
                    points.Add(corners[corner]);
                    normals.Add(normal);
                }

                indices.Add(index);
            }
        }

        return new BladeLevel([.. points], [.. normals], [.. indices], step);
    }
}
