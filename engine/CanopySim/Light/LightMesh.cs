using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// The scene's triangles laid out for projection: heights above the slope, corners in blocks of eight triangles so that one
/// vector holds the same number of each, highest triangle first. Height falls monotonically along every line of light, so
/// this one order leaves the fragments of a pixel nearly sorted whatever the direction.
/// </summary>
internal sealed class LightMesh
{
    /// <summary>Triangles to a block.</summary>
    public const int Lanes = 8;

    public LightMesh(Scene scene)
    {
        var (cell, count) = (scene.Cell, scene.TriangleCount);
        var corners = new float[9 * count];
        var tops = new float[count];
        var order = new int[count];
        for (var triangle = 0; triangle < count; triangle++)
        {
            var top = float.MinValue;
            for (var corner = 0; corner < 3; corner++)
            {
                var point = scene.Corners[(3 * triangle) + corner];
                var height = (float)(point.Z - (cell.RiseAcross * point.X) - (cell.RiseAlong * point.Y));
                var at = (9 * triangle) + (3 * corner);
                (corners[at], corners[at + 1], corners[at + 2]) = (point.X, point.Y, height);
                top = Math.Max(top, height);
            }

            if (!float.IsFinite(top)) throw new ArgumentException($"triangle {triangle} has a corner that is not a number");
            (tops[triangle], order[triangle]) = (top, triangle);
        }

        // Ties by index, or the order would hang on the sort.
        Array.Sort(order, (a, b) => tops[a] != tops[b] ? tops[b].CompareTo(tops[a]) : a.CompareTo(b));

        // Triangles that fill the last block have all corners in one point and cover nothing.
        Corners = new float[9 * Lanes * ((count + Lanes - 1) / Lanes)];
        Faces = new uint[count];
        Triangles = order;
        for (var place = 0; place < count; place++)
        {
            for (var value = 0; value < 9; value++)
                Corners[(((9 * (place / Lanes)) + value) * Lanes) + (place % Lanes)] = corners[(9 * order[place]) + value];
            Faces[place] = (uint)(2 * scene.SurfaceOfTriangle[order[place]]);
        }
    }

    public int Count => Triangles.Length;

    /// <summary>x, y, height above the slope of three corners [m]: number n of the block's triangle t is at 8 (9 block + n) + t.</summary>
    public float[] Corners { get; }

    /// <summary>Upper or outer face of each triangle's surface: 2 × surface; the face behind it is one more.</summary>
    public uint[] Faces { get; }

    /// <summary>The triangle's number in the scene.</summary>
    public int[] Triangles { get; }
}
