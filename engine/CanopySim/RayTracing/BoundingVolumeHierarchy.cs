namespace CanopySim.RayTracing;

/// <summary>
/// A binary tree of boxes over triangles, split where the surface area heuristic over bins is cheapest (Wald 2007,
/// doi:10.1109/RT.2007.4342588). Plain and in double precision: it is the witness of the raster, not its rival.
/// </summary>
public sealed class BoundingVolumeHierarchy
{
    private const int Bins = 16;
    private const int LeafSize = 4;

    private readonly Point3[] _corners;
    private readonly int[] _order;
    private readonly List<Node> _nodes = [];

    /// <param name="corners">Three corners a triangle [m].</param>
    public BoundingVolumeHierarchy(Point3[] corners)
    {
        _corners = corners;
        _order = [.. Enumerable.Range(0, corners.Length / 3)];
        if (_order.Length > 0) Build(0, _order.Length);
    }

    /// <summary>Decides whether a triangle may be hit at a distance; true skips it.</summary>
    public delegate bool Skip(int triangle, double distance);

    /// <summary>Nearest triangle within a distance [m], or with <paramref name="any"/> the first that turns up, and its distance.</summary>
    public (int Triangle, double Distance)? Find(in Ray ray, double limit, Skip? skip = null, bool any = false)
    {
        if (_nodes.Count == 0) return null;
        (int Triangle, double Distance)? best = null;
        var stack = new Stack<int>(64);
        stack.Push(0);
        while (stack.TryPop(out var index))
        {
            var node = _nodes[index];
            if (!node.Box.Meets(ray, best?.Distance ?? limit)) continue;
            if (node.Count == 0)
            {
                // The nearer child is looked at first.
                var nearFirst = ray.Direction.Along(node.Axis) >= 0;
                stack.Push(nearFirst ? node.Second : index + 1);
                stack.Push(nearFirst ? index + 1 : node.Second);
                continue;
            }

            for (var at = node.Second; at < node.Second + node.Count; at++)
            {
                var triangle = _order[at];
                var (a, b, c) = (_corners[3 * triangle], _corners[(3 * triangle) + 1], _corners[(3 * triangle) + 2]);
                if (TriangleIntersection.Distance(ray, a, b, c) is not { } distance) continue;
                if (distance > (best?.Distance ?? limit) || skip?.Invoke(triangle, distance) == true) continue;

                // Equal distances go to the smaller number, whatever the tree.
                if (best is { } known && distance == known.Distance && triangle > known.Triangle) continue;
                best = (triangle, distance);
                if (any) return best;
            }
        }

        return best;
    }

    // Depth first: the first child follows its parent at once.
    private void Build(int start, int count)
    {
        var (box, centers) = (BoundingBox.Empty, BoundingBox.Empty);
        for (var at = start; at < start + count; at++)
        {
            box = box.With(BoxOf(_order[at]));
            centers = centers.With(BoxOf(_order[at]).Center);
        }

        var index = _nodes.Count;
        _nodes.Add(new Node(box, 0, start, count));
        if (count <= LeafSize) return;
        var size = centers.High - centers.Low;
        var axis = size.X >= size.Y && size.X >= size.Z ? 0 : size.Y >= size.Z ? 1 : 2;
        var middle = Split(start, count, axis, centers);
        Build(start, middle - start);
        var second = _nodes.Count;
        Build(middle, start + count - middle);
        _nodes[index] = new Node(box, axis, second, 0);
    }

    private int Split(int start, int count, int axis, in BoundingBox centers)
    {
        var (low, extent) = (centers.Low.Along(axis), centers.High.Along(axis) - centers.Low.Along(axis));
        int BinOf(int triangle) => Math.Min(Bins - 1, (int)(Bins * (BoxOf(triangle).Center.Along(axis) - low) / extent));
        var middle = start + (count / 2);
        if (!(extent > 0)) return middle;

        var (boxes, counts) = (new BoundingBox[Bins], new int[Bins]);
        Array.Fill(boxes, BoundingBox.Empty);
        foreach (var triangle in _order.AsSpan(start, count))
        {
            var bin = BinOf(triangle);
            boxes[bin] = boxes[bin].With(BoxOf(triangle));
            counts[bin]++;
        }

        var (bestBin, bestCost) = (0, double.PositiveInfinity);
        for (var bin = 1; bin < Bins; bin++)
        {
            var cost = Cost(boxes.AsSpan(0, bin), counts.AsSpan(0, bin)) + Cost(boxes.AsSpan(bin), counts.AsSpan(bin));
            if (cost < bestCost) (bestBin, bestCost) = (bin, cost);
        }

        var keys = new int[count];
        for (var at = 0; at < count; at++) keys[at] = BinOf(_order[start + at]);
        keys.AsSpan().Sort(_order.AsSpan(start, count));
        var left = keys.AsSpan().IndexOfAnyExceptInRange(0, bestBin - 1);
        return left <= 0 ? middle : start + left;

        static double Cost(ReadOnlySpan<BoundingBox> boxes, ReadOnlySpan<int> counts)
        {
            var (box, sum) = (BoundingBox.Empty, 0);
            for (var i = 0; i < boxes.Length; i++) (box, sum) = (box.With(boxes[i]), sum + counts[i]);
            return box.HalfSurface * sum;
        }
    }

    private BoundingBox BoxOf(int triangle) =>
        BoundingBox.Empty.With(_corners[3 * triangle]).With(_corners[(3 * triangle) + 1]).With(_corners[(3 * triangle) + 2]);

    /// <param name="Box">Bounds.</param>
    /// <param name="Axis">Axis of the split, of an inner node.</param>
    /// <param name="Second">Second child of an inner node; first place in the order of a leaf.</param>
    /// <param name="Count">Triangles of a leaf; 0 for an inner node.</param>
    private readonly record struct Node(BoundingBox Box, int Axis, int Second, int Count);
}
