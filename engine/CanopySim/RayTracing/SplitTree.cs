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

    private readonly Vector3[] _lows;
    private readonly Vector3[] _highs;
    private readonly Bin[] _bins = new Bin[Bins];
    private readonly float[] _costs = new float[Bins];

    /// <param name="corners">Three corners a triangle [m].</param>
    public SplitTree(ReadOnlySpan<Vector3> corners)
    {
        var count = corners.Length / 3;
        (_lows, _highs, Order) = (new Vector3[count], new Vector3[count], new int[count]);
        for (var triangle = 0; triangle < count; triangle++)
        {
            var (a, b, c) = (corners[3 * triangle], corners[(3 * triangle) + 1], corners[(3 * triangle) + 2]);
            _lows[triangle] = Vector3.Min(a, Vector3.Min(b, c));
            _highs[triangle] = Vector3.Max(a, Vector3.Max(b, c));
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
        var (low, high) = (new Vector3(float.PositiveInfinity), new Vector3(float.NegativeInfinity));
        var (centerLow, centerHigh) = (low, high);
        foreach (var triangle in Order.AsSpan(first, count))
        {
            low = Vector3.Min(low, _lows[triangle]);
            high = Vector3.Max(high, _highs[triangle]);
            var center = _lows[triangle] + _highs[triangle];
            centerLow = Vector3.Min(centerLow, center);
            centerHigh = Vector3.Max(centerHigh, center);
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

    private int Split(int first, int count, int depth, Vector3 low, Vector3 extent)
    {
        var (bestAxis, bestBin, bestCost) = (-1, 0, float.PositiveInfinity);
        if (depth < HeuristicDepth)
        {
            for (var axis = 0; axis < 3; axis++)
            {
                if (!(extent[axis] > 0)) continue;
                Fill(first, count, axis, low[axis], Bins / extent[axis]);
                var (bin, cost) = Cheapest();
                if (cost < bestCost) (bestAxis, bestBin, bestCost) = (axis, bin, cost);
            }
        }

        var middle = first + (count / 2);
        if (bestAxis < 0) return middle;
        var (from, scale) = (low[bestAxis], Bins / extent[bestAxis]);
        var (at, end) = (first, first + count);
        while (at < end)
        {
            if (BinOf(Order[at], bestAxis, from, scale) < bestBin) at++;
            else (Order[at], Order[end - 1], end) = (Order[end - 1], Order[at], end - 1);
        }

        return at > first && at < first + count ? at : middle;
    }

    private void Fill(int first, int count, int axis, float low, float scale)
    {
        Array.Fill(_bins, new Bin(new Vector3(float.PositiveInfinity), new Vector3(float.NegativeInfinity), 0));
        foreach (var triangle in Order.AsSpan(first, count))
        {
            ref var bin = ref _bins[BinOf(triangle, axis, low, scale)];
            bin = bin.With(new Bin(_lows[triangle], _highs[triangle], 1));
        }
    }

    // Before which bin to split: triangles times half surface on both sides is least.
    private (int Bin, float Cost) Cheapest()
    {
        var right = _bins[Bins - 1];
        for (var bin = Bins - 1; bin > 0; bin--)
        {
            _costs[bin] = right.Count * HalfSurface(right.Low, right.High);
            right = right.With(_bins[bin - 1]);
        }

        var (bestBin, bestCost, left) = (0, float.PositiveInfinity, _bins[0]);
        for (var bin = 1; bin < Bins; bin++)
        {
            var cost = _costs[bin] + (left.Count * HalfSurface(left.Low, left.High));
            if (cost < bestCost) (bestBin, bestCost) = (bin, cost);
            left = left.With(_bins[bin]);
        }

        return (bestBin, bestCost);
    }

    private int BinOf(int triangle, int axis, float low, float scale) =>
        Math.Clamp((int)((_lows[triangle][axis] + _highs[triangle][axis] - low) * scale), 0, Bins - 1);

    private static float HalfSurface(Vector3 low, Vector3 high)
    {
        var size = high - low;
        return size.X < 0 ? 0 : (size.X * size.Y) + (size.Y * size.Z) + (size.Z * size.X);
    }

    private readonly record struct Bin(Vector3 Low, Vector3 High, int Count)
    {
        public Bin With(in Bin other) => new(Vector3.Min(Low, other.Low), Vector3.Max(High, other.High), Count + other.Count);
    }

    /// <param name="Low">Lower bound [m].</param>
    /// <param name="High">Upper bound [m].</param>
    /// <param name="First">First place in the order.</param>
    /// <param name="Count">Triangles.</param>
    /// <param name="Left">Index of a child; −1 where one triangle is left.</param>
    /// <param name="Right">Index of the other child.</param>
    internal readonly record struct Node(Vector3 Low, Vector3 High, int First, int Count, int Left, int Right)
    {
        public float HalfSurface => SplitTree.HalfSurface(Low, High);
    }
}
