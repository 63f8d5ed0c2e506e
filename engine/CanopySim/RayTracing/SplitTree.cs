using System.Numerics;

namespace CanopySim.RayTracing;

/// <summary>
/// A binary tree over triangles down to single ones, split along each axis where the surface area heuristic over bins is
/// cheapest (Wald 2007, doi:10.1109/RT.2007.4342588): the material from which <see cref="WidePlan"/> chooses wide nodes.
/// </summary>
internal sealed class SplitTree
{
    private const int Bins = 16;

    // Deeper down halves by count, so that no scene makes a tree deeper than this and the logarithm of its triangles.
    private const int HeuristicDepth = 48;

    private readonly Vector4[] _lows;
    private readonly Vector4[] _highs;
    private readonly Bin[] _bins = new Bin[3 * Bins];
    private readonly float[] _costs = new float[Bins];

    /// <param name="corners">Three corners a triangle [m].</param>
    public SplitTree(ReadOnlySpan<Vector3> corners)
    {
        var count = corners.Length / 3;
        (_lows, _highs, Order) = (new Vector4[count], new Vector4[count], new int[count]);
        for (var triangle = 0; triangle < count; triangle++)
        {
            var (a, b, c) = (corners[3 * triangle], corners[(3 * triangle) + 1], corners[(3 * triangle) + 2]);
            _lows[triangle] = new Vector4(Vector3.Min(a, Vector3.Min(b, c)), 0);
            _highs[triangle] = new Vector4(Vector3.Max(a, Vector3.Max(b, c)), 0);
            Order[triangle] = triangle;
        }

        Nodes = new Node[Math.Max(0, (2 * count) - 1)];
        var used = 0;
        if (count > 0) Build(0, count, 0, ref used);
    }

    /// <summary>Root first, children after their parents.</summary>
    public Node[] Nodes { get; }

    /// <summary>Triangles; each node holds a stretch of it.</summary>
    public int[] Order { get; }

    private int Build(int first, int count, int depth, ref int used)
    {
        var (low, high) = (new Vector4(float.PositiveInfinity), new Vector4(float.NegativeInfinity));
        var (centerLow, centerHigh) = (low, high);
        foreach (var triangle in Order.AsSpan(first, count))
        {
            low = Vector4.Min(low, _lows[triangle]);
            high = Vector4.Max(high, _highs[triangle]);
            var center = _lows[triangle] + _highs[triangle];
            centerLow = Vector4.Min(centerLow, center);
            centerHigh = Vector4.Max(centerHigh, center);
        }

        var index = used++;
        var (left, right) = (-1, -1);
        if (count > 1)
        {
            var middle = Split(first, count, depth, centerLow, centerHigh - centerLow);
            left = Build(first, middle - first, depth + 1, ref used);
            right = Build(middle, first + count - middle, depth + 1, ref used);
        }

        Nodes[index] = new Node(low, high, first, count, left, right);
        return index;
    }

    private int Split(int first, int count, int depth, Vector4 low, Vector4 extent)
    {
        var (bestAxis, bestBin, bestCost) = (-1, 0, float.PositiveInfinity);
        if (count > 2 && depth < HeuristicDepth)
        {
            Fill(first, count, low, extent);
            for (var axis = 0; axis < 3; axis++)
            {
                if (!(extent[axis] > 0)) continue;
                var (bin, cost) = Cheapest(_bins.AsSpan(axis * Bins, Bins));
                if (cost < bestCost) (bestAxis, bestBin, bestCost) = (axis, bin, cost);
            }
        }

        var middle = first + (count / 2);
        if (bestAxis < 0) return middle;
        var scale = new Vector4(Bins) / extent;
        var (at, end) = (first, first + count);
        while (at < end)
        {
            if (BinOf(Place(Order[at], low, scale)[bestAxis]) < bestBin) at++;
            else (Order[at], Order[end - 1], end) = (Order[end - 1], Order[at], end - 1);
        }

        return at > first && at < first + count ? at : middle;
    }

    private void Fill(int first, int count, Vector4 low, Vector4 extent)
    {
        Array.Fill(_bins, new Bin(new Vector4(float.PositiveInfinity), new Vector4(float.NegativeInfinity), 0));
        var scale = new Vector4(Bins) / extent;
        foreach (var triangle in Order.AsSpan(first, count))
        {
            var place = Place(triangle, low, scale);
            Add(ref _bins[BinOf(place.X)], triangle);
            Add(ref _bins[Bins + BinOf(place.Y)], triangle);
            Add(ref _bins[(2 * Bins) + BinOf(place.Z)], triangle);
        }
    }

    private void Add(ref Bin bin, int triangle)
    {
        bin.Low = Vector4.Min(bin.Low, _lows[triangle]);
        bin.High = Vector4.Max(bin.High, _highs[triangle]);
        bin.Count++;
    }

    // Before which bin to split: triangles times half surface on both sides is least.
    private (int Bin, float Cost) Cheapest(ReadOnlySpan<Bin> bins)
    {
        var right = bins[Bins - 1];
        for (var bin = Bins - 1; bin > 0; bin--)
        {
            _costs[bin] = right.Count * HalfSurface(right.Low, right.High);
            right = right.With(bins[bin - 1]);
        }

        var (bestBin, bestCost, left) = (0, float.PositiveInfinity, bins[0]);
        for (var bin = 1; bin < Bins; bin++)
        {
            var cost = _costs[bin] + (left.Count * HalfSurface(left.Low, left.High));
            if (cost < bestCost) (bestBin, bestCost) = (bin, cost);
            left = left.With(bins[bin]);
        }

        return (bestBin, bestCost);
    }

    // Twice the center of a triangle's box, in bins.
    private Vector4 Place(int triangle, Vector4 low, Vector4 scale) => (_lows[triangle] + _highs[triangle] - low) * scale;

    // Where all centers lie in one plane the place is no number, and converts to 0.
    private static int BinOf(float place) => Math.Clamp((int)place, 0, Bins - 1);

    private static float HalfSurface(Vector4 low, Vector4 high)
    {
        var size = high - low;
        return size.X < 0 ? 0 : (size.X * size.Y) + (size.Y * size.Z) + (size.Z * size.X);
    }

    private record struct Bin(Vector4 Low, Vector4 High, int Count)
    {
        public readonly Bin With(in Bin other) => new(Vector4.Min(Low, other.Low), Vector4.Max(High, other.High), Count + other.Count);
    }

    /// <param name="Low">Lower bound [m].</param>
    /// <param name="High">Upper bound [m].</param>
    /// <param name="First">First place in the order.</param>
    /// <param name="Count">Triangles.</param>
    /// <param name="Left">Index of a child; −1 where one triangle is left.</param>
    /// <param name="Right">Index of the other child.</param>
    internal readonly record struct Node(Vector4 Low, Vector4 High, int First, int Count, int Left, int Right)
    {
        public float HalfSurface => SplitTree.HalfSurface(Low, High);
    }
}
