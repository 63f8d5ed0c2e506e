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

    public LightMesh(Scene scene, int threads = 1)
    {
        var starts = Runs(scene);
        var runs = new Run[starts.Count - 1];
        Workers.Run(threads, runs.Length, () => true, (_, run) => runs[run] = new Run(scene, starts[run], starts[run + 1]));
        Count = runs.Sum(run => run.Facets.Count);

        // Ties by place in the scene, or the order would hang on the sort.
        var keys = new ulong[Count];
        var (of, first) = (new (int Run, int Facet)[Count], 0);
        for (var run = 0; run < runs.Length; run++)
        {
            for (var facet = 0; facet < runs[run].Facets.Count; facet++, first++)
                (keys[first], of[first]) = (((ulong)Ascending(-runs[run].Value(facet, HighestAt)) << 32) | (uint)first, (run, facet));
        }

        Array.Sort(keys);
        var order = Array.ConvertAll(keys, key => of[(int)(uint)key]);
        for (var start = 0; start < Count; start += Neighbors) MakeBlocks(runs, keys.AsSpan(start), order.AsSpan(start, Math.Min(Neighbors, Count - start)));

        // Facets that fill the last block have all corners in one point and cover nothing.
        Numbers = new float[Values * Lanes * ((Count + Lanes - 1) / Lanes)];
        EdgesOfBlock = new int[(Count + Lanes - 1) / Lanes];
        Faces = new uint[Count];
        Areas = new double[Count];
        (Lowest, Highest) = (new float[Count], new float[Count]);
        for (var place = 0; place < Count; place++)
        {
            var (run, facet) = (runs[order[place].Run], order[place].Facet);
            for (var value = 0; value < Values; value++)
                Numbers[(((Values * (place / Lanes)) + value) * Lanes) + (place % Lanes)] = run.Value(facet, value);
            EdgesOfBlock[place / Lanes] = Math.Max(EdgesOfBlock[place / Lanes], run.Facets.Corners(facet).Length);
            (Faces[place], Areas[place]) = ((uint)(2 * run.Facets.Surfaces[facet]), run.Areas[facet]);
            (Lowest[place], Highest[place]) = (run.Lowest[facet], run.Value(facet, HighestAt));
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

    // Where runs of a few thousand triangles begin, each with a surface.
    private static List<int> Runs(Scene scene)
    {
        const int Triangles = 4096;
        var starts = new List<int> { 0 };
        for (var triangle = 1; triangle < scene.TriangleCount; triangle++)
        {
            if (triangle - starts[^1] >= Triangles && scene.SurfaceOfTriangle[triangle] != scene.SurfaceOfTriangle[triangle - 1]) starts.Add(triangle);
        }

        starts.Add(scene.TriangleCount);
        return starts;
    }

    // Sorts neighbors by corners, area and the order that they had.
    private static void MakeBlocks(Run[] runs, Span<ulong> keys, Span<(int Run, int Facet)> order)
    {
        Span<(int Run, int Facet)> before = stackalloc (int, int)[Neighbors];
        order.CopyTo(before);
        for (var i = 0; i < order.Length; i++)
        {
            var (run, facet) = (runs[order[i].Run], order[i].Facet);
            keys[i] = ((ulong)run.Facets.Corners(facet).Length << 60) | ((ulong)BitConverter.SingleToUInt32Bits((float)run.Areas[facet]) << 16) | (uint)i;
        }

        keys[..order.Length].Sort();
        for (var i = 0; i < order.Length; i++) order[i] = before[(int)(keys[i] & 0xFFFF)];
    }

    // Bits that sort as the numbers do.
    private static uint Ascending(float value)
    {
        var bits = BitConverter.SingleToUInt32Bits(value + 0f);
        return (bits & 0x8000_0000) != 0 ? ~bits : bits | 0x8000_0000;
    }

    /// <summary>Facets of some triangles with their numbers.</summary>
    private sealed class Run
    {
        private readonly float[] _values;

        public Run(Scene scene, int firstTriangle, int endTriangle)
        {
            Facets = new FacetList(scene, firstTriangle, endTriangle);
            _values = new float[Values * Facets.Count];
            (Areas, Lowest) = (new double[Facets.Count], new float[Facets.Count]);
            for (var facet = 0; facet < Facets.Count; facet++)
                (Areas[facet], Lowest[facet]) = Measure(Facets.Corners(facet), scene.Cell, _values.AsSpan(Values * facet, Values));
        }

        public FacetList Facets { get; }

        public double[] Areas { get; }

        public float[] Lowest { get; }

        public float Value(int facet, int value) => _values[(Values * facet) + value];
    }

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
