using System.Numerics;
using System.Runtime.CompilerServices;

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

    // Surfaces of boxes of this size are finite still [m].
    private const float FarthestCoordinate = 1e9f;

    /// <summary>Where a node's children stand in it.</summary>
    public const int ChildrenAt = 6 * Width;

    public const int OrdersAt = 7 * Width;

    /// <summary>Where a packet's triangles stand in it.</summary>
    public const int TrianglesAt = 12 * Width;

    private readonly float[] _block;
    private readonly int _first;

    public unsafe WideStore(ReadOnlySpan<Vector3> corners)
    {
        var padding = Padding(corners);
        var tree = new SplitTree(corners);
        var filler = new Filler(tree, new WidePlan(tree), padding);
        if (tree.Nodes.Length > 0) filler.AddNode(0, corners);
        (NodeCount, PacketCount) = (filler.Nodes.Count / NodeSize, filler.Packets.Count / PacketSize);
        _block = GC.AllocateUninitializedArray<float>(filler.Nodes.Count + filler.Packets.Count + (Alignment / sizeof(float)), pinned: true);
        var past = (int)((nuint)Unsafe.AsPointer(ref _block[0]) % Alignment);
        _first = (Alignment - past) % Alignment / sizeof(float);
        filler.Nodes.CopyTo(_block, _first);
        filler.Packets.CopyTo(_block, _first + filler.Nodes.Count);
    }

    public int NodeCount { get; }

    public int PacketCount { get; }

    public unsafe float* Nodes => (float*)Unsafe.AsPointer(ref _block[_first]);

    public unsafe float* Packets => Nodes + (NodeCount * NodeSize);

    // Eight units in the last place of the largest coordinate [m]: a box test errs by two for rays that start no farther off. No box
    // is flat then, nor is a ray lost that runs along one.
    private static float Padding(ReadOnlySpan<Vector3> corners)
    {
        var largest = 0f;
        foreach (var corner in corners)
        {
            var size = Vector3.Abs(corner);
            if (!(size.X <= FarthestCoordinate && size.Y <= FarthestCoordinate && size.Z <= FarthestCoordinate))
                throw new ArgumentException($"a corner at {corner} m is no place for a triangle", nameof(corners));
            largest = Math.Max(largest, Math.Max(size.X, Math.Max(size.Y, size.Z)));
        }

        return 8 * 1.2e-7f * largest;
    }

    private sealed class Filler(SplitTree tree, WidePlan plan, float padding)
    {
        public List<float> Nodes { get; } = [];

        public List<float> Packets { get; } = [];

        // Depth first.
        public int AddNode(int node, ReadOnlySpan<Vector3> corners)
        {
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
                var (low, high) = (child.Low - new Vector4(padding), child.High + new Vector4(padding));
                for (var axis = 0; axis < 3; axis++) (own[(axis * Width) + slot], own[((3 + axis) * Width) + slot]) = (low[axis], high[axis]);
                var link = plan.IsPacket(children[slot]) ? ~AddPacket(child, corners) : AddNode(children[slot], corners);
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
