using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// The scene's facets laid out for projection: heights above the slope, numbers in blocks of eight facets so that one vector
/// holds the same number of each, high facets first. Height falls monotonically along every line of light, so this one order
/// leaves the fragments of a pixel nearly sorted whatever the direction. Among neighbors in height those alike in corners and
/// area make a block: it is drawn until its tallest is done.
/// </summary>
internal sealed class LightMesh
{
    /// <summary>Facets to a block.</summary>
    public const int Lanes = 8;

    // Facets among which blocks are made.
    private const int Neighbors = 16 * Lanes;

    /// <summary>Numbers of a facet: x, y, height of its corners, the normal, the highest height.</summary>
    public const int Values = HighestAt + 1;

    public const int NormalAt = 3 * FacetList.MaximumCorners;

    public const int HighestAt = NormalAt + 3;

    public LightMesh(Scene scene)
    {
        var facets = new FacetList(scene);
        Count = facets.Count;
        var values = new float[Values * Count];
        var keys = new (float Top, int Facet)[Count];
        var (areas, lowest) = (new double[Count], new float[Count]);
        for (var facet = 0; facet < Count; facet++)
        {
            var own = values.AsSpan(Values * facet, Values);
            (areas[facet], lowest[facet]) = Measure(facets.Corners(facet), scene.Cell, own);
            keys[facet] = (-own[HighestAt], facet);
        }

        // Ties by index, or the order would hang on the sort.
        Array.Sort(keys);
        for (var first = 0; first < Count; first += Neighbors)
        {
            keys.AsSpan(first, Math.Min(Neighbors, Count - first)).Sort((a, b) =>
                (facets.Corners(a.Facet).Length, areas[a.Facet], a.Facet).CompareTo((facets.Corners(b.Facet).Length, areas[b.Facet], b.Facet)));
        }

        // Facets that fill the last block have all corners in one point and cover nothing.
        Numbers = new float[Values * Lanes * ((Count + Lanes - 1) / Lanes)];
        EdgesOfBlock = new int[(Count + Lanes - 1) / Lanes];
        Faces = new uint[Count];
        Areas = new double[Count];
        (Lowest, Highest) = (new float[Count], new float[Count]);
        for (var place = 0; place < Count; place++)
        {
            var facet = keys[place].Facet;
            for (var value = 0; value < Values; value++)
                Numbers[(((Values * (place / Lanes)) + value) * Lanes) + (place % Lanes)] = values[(Values * facet) + value];
            EdgesOfBlock[place / Lanes] = Math.Max(EdgesOfBlock[place / Lanes], facets.Corners(facet).Length);
            (Faces[place], Areas[place]) = ((uint)(2 * facets.Surfaces[facet]), areas[facet]);
            (Lowest[place], Highest[place]) = (lowest[facet], -keys[place].Top);
        }
    }

    public int Count { get; }

    /// <summary>Number n of the facet t of a block: at 8 (block × <see cref="Values"/> + n) + t [m; the normal m²].</summary>
    public float[] Numbers { get; }

    /// <summary>Most edges of a facet of each block.</summary>
    public int[] EdgesOfBlock { get; }

    /// <summary>Upper or outer face of each facet's surface: 2 × surface; the face behind it is one more.</summary>
    public uint[] Faces { get; }

    /// <summary>True area of each facet [m²].</summary>
    public double[] Areas { get; }

    /// <summary>Lowest height of each facet above the slope [m].</summary>
    public float[] Lowest { get; }

    /// <summary>Its highest [m].</summary>
    public float[] Highest { get; }

    // Writes a facet's numbers in the frame of the slope and returns its true area and lowest height. The last corner is repeated
    // up to five.
    private static (double Area, float Lowest) Measure(ReadOnlySpan<Vector3> corners, in Cell cell, Span<float> values)
    {
        var (lowest, highest) = (float.MaxValue, float.MinValue);
        for (var corner = 0; corner < FacetList.MaximumCorners; corner++)
        {
            var point = corners[Math.Min(corner, corners.Length - 1)];
            var height = (float)(point.Z - (cell.RiseAcross * point.X) - (cell.RiseAlong * point.Y));
            (values[3 * corner], values[(3 * corner) + 1], values[(3 * corner) + 2]) = (point.X, point.Y, height);
            (lowest, highest) = (Math.Min(lowest, height), Math.Max(highest, height));
        }

        var (normal, area) = (Vector3.Zero, 0.0);
        var first = new Vector3(values[0], values[1], values[2]);
        for (var corner = 1; corner + 1 < corners.Length; corner++)
        {
            var (at, next) = (3 * corner, 3 * (corner + 1));
            normal += Vector3.Cross(
                new Vector3(values[at], values[at + 1], values[at + 2]) - first, new Vector3(values[next], values[next + 1], values[next + 2]) - first);
            area += 0.5 * Vector3.Cross(corners[corner] - corners[0], corners[corner + 1] - corners[0]).Length();
        }

        (values[NormalAt], values[NormalAt + 1], values[NormalAt + 2]) = (normal.X, normal.Y, normal.Z);
        values[HighestAt] = highest;
        return (area, lowest);
    }
}
