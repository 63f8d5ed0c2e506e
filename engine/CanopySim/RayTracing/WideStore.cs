using System.Numerics;

namespace CanopySim.RayTracing;

/// <summary>
/// Wide nodes and packets in one pinned block, aligned to 64 bytes. A node is eight numbers each of lows x, y, z, highs x, y, z,
/// then eight children (a node's index; a packet's complement) and eight orders: bits 3 o to 3 o + 2 of the entry k tell which
/// child a ray of octant o meets k-th, farthest first. A packet is eight numbers each of a corner, two edges and their cross
/// product, then the triangles.
/// </summary>
internal sealed class WideStore
{
    public const int Width = WidePlan.Width;

    /// <summary>Floats of a node.</summary>
    public const int NodeSize = 8 * Width;

    /// <summary>Floats of a packet.</summary>
    public const int PacketSize = 13 * Width;

    private const int Alignment = 64;

    private readonly float[] _block;
    private readonly int _offset;

    public WideStore(ReadOnlySpan<Vector3> corners)
    {
        var tree = new SplitTree(corners);
        var plan = new WidePlan(tree);
        var filler = new Filler(tree, plan, Padding(corners));
        if (tree.Nodes.Length > 0) filler.AddNode(0, corners);
        (Nodes, Packets, Depth) = (filler.Nodes.Count / NodeSize, filler.Packets.Count / PacketSize, filler.Depth);
        _block = GC.AllocateUninitializedArray<float>(filler.Nodes.Count + filler.Packets.Count + (Alignment / sizeof(float)), pinned: true);
        unsafe
        {
            fixed (float* start = _block)
            {
                var past = (int)((nuint)start % Alignment);
                _offset = past == 0 ? 0 : (Alignment - past) / sizeof(float);
            }
        }

        filler.Nodes.CopyTo(_block, _offset);
        filler.Packets.CopyTo(_block, _offset + filler.Nodes.Count);
    }

    public int Nodes { get; }

    public int Packets { get; }

    /// <summary>Nodes on the longest way down.</summary>
    public int Depth { get; }

    public ref float First => ref _block[_offset];

    // Eight units in the last place of the largest coordinate: more than a box test of floats can err for rays from there [m].
    private static float Padding(ReadOnlySpan<Vector3> corners)
    {
        var largest = 0f;
        foreach (var corner in corners)
        {
            var size = Vector3.Abs(corner);
            largest = Math.Max(largest, Math.Max(size.X, Math.Max(size.Y, size.Z)));
        }

        return 8 * 1.2e-7f * largest;
    }

    private sealed class Filler(SplitTree tree, WidePlan plan, float padding)
    {
        public List<float> Nodes { get; } = [];

        public List<float> Packets { get; } = [];

        public int Depth { get; private set; }

        // Depth first.
        public int AddNode(int node, ReadOnlySpan<Vector3> corners, int depth = 1)
        {
            Depth = Math.Max(Depth, depth);
            var index = Nodes.Count / NodeSize;
            Span<int> children = stackalloc int[Width];
            var count = 1;
            children[0] = node;
            if (!plan.IsPacket(node)) count = plan.Children(node, children);
            var own = new float[NodeSize];
            own.AsSpan(0, 3 * Width).Fill(float.PositiveInfinity);
            own.AsSpan(3 * Width, 3 * Width).Fill(float.NegativeInfinity);
            Nodes.AddRange(own);
            for (var slot = 0; slot < count; slot++)
            {
                ref readonly var child = ref tree.Nodes[children[slot]];
                var (low, high) = (child.Low - new Vector3(padding), child.High + new Vector3(padding));
                for (var axis = 0; axis < 3; axis++) (own[(axis * Width) + slot], own[((3 + axis) * Width) + slot]) = (low[axis], high[axis]);
                var link = plan.IsPacket(children[slot]) ? ~AddPacket(child, corners) : AddNode(children[slot], corners, depth + 1);
                own[(6 * Width) + slot] = BitConverter.Int32BitsToSingle(link);
            }

            SetOrders(own, count);
            for (var i = 0; i < NodeSize; i++) Nodes[(index * NodeSize) + i] = own[i];
            return index;
        }

        // Empty slots come first, as if they were farthest.
        private static void SetOrders(float[] node, int count)
        {
            var (orders, keys, slots) = (new int[Width], new float[Width], new int[Width]);
            for (var octant = 0; octant < 8; octant++)
            {
                for (var slot = 0; slot < Width; slot++)
                {
                    slots[slot] = slot;
                    keys[slot] = float.NegativeInfinity;
                    if (slot >= count) continue;
                    keys[slot] = 0;
                    for (var axis = 0; axis < 3; axis++)
                    {
                        var center = node[(axis * Width) + slot] + node[((3 + axis) * Width) + slot];
                        keys[slot] += (octant & (1 << axis)) != 0 ? center : -center;
                    }
                }

                keys.AsSpan().Sort(slots.AsSpan());
                for (var place = 0; place < Width; place++) orders[place] |= slots[place] << (3 * octant);
            }

            for (var place = 0; place < Width; place++) node[(7 * Width) + place] = BitConverter.Int32BitsToSingle(orders[place]);
        }

        private int AddPacket(in SplitTree.Node node, ReadOnlySpan<Vector3> corners)
        {
            var index = Packets.Count / PacketSize;
            var own = new float[PacketSize];

            // Not a number compares with nothing: lanes without a triangle are never hit.
            own.AsSpan().Fill(float.NaN);
            var lane = 0;
            foreach (var triangle in tree.Order.AsSpan(node.First, node.Count))
            {
                var a = corners[3 * triangle];
                var (edge1, edge2) = (corners[(3 * triangle) + 1] - a, corners[(3 * triangle) + 2] - a);
                Put(own, 0, lane, a);
                Put(own, 3, lane, edge1);
                Put(own, 6, lane, edge2);
                Put(own, 9, lane, Vector3.Cross(edge1, edge2));
                own[(12 * Width) + lane++] = BitConverter.Int32BitsToSingle(triangle);
            }

            Packets.AddRange(own);
            return index;
        }

        private static void Put(float[] packet, int value, int lane, Vector3 vector)
        {
            for (var axis = 0; axis < 3; axis++) packet[((value + axis) * Width) + lane] = vector[axis];
        }
    }
}
