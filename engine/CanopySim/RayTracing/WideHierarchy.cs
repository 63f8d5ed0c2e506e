using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.RayTracing;

/// <summary>Where a ray in single precision meets a triangle.</summary>
/// <param name="Triangle">Its number.</param>
/// <param name="Distance">From the origin [m, along a unit vector].</param>
public readonly record struct WideHit(int Triangle, float Distance);

/// <summary>
/// A tree of boxes over triangles for single rays in single precision, eight boxes or eight triangles at a time. It answers what
/// <see cref="BoundingVolumeHierarchy"/> answers, so each can be checked against the other. A query allocates nothing, and queries may
/// run on any number of threads.
/// </summary>
public sealed class WideHierarchy
{
    // Seven siblings at most wait on each level, and SplitTree is at most 48 + 31 levels deep; a whole vector is stored at the top.
    private const int StackSize = 640;

    // Smaller components of a direction count as so much, so that no reciprocal is infinite and 0 × ∞ does not occur.
    private const float LeastComponent = 1e-18f;

    private const int Width = WideStore.Width;

    private readonly WideStore _store;
    private readonly unsafe float* _nodes;
    private readonly unsafe float* _packets;
    private readonly unsafe int* _squeezes = EightOrders.First;

    /// <param name="corners">
    /// Three corners a triangle [m]. Near the origin: a coordinate is known to 1e-7 of itself, so a scene 10 km off loses a millimeter.
    /// </param>
    public unsafe WideHierarchy(ReadOnlySpan<Vector3> corners)
    {
        _store = new WideStore(corners);

        // Pinned for as long as the store lives, and so this.
        _nodes = _store.Nodes;
        _packets = _store.Packets;
    }

    private interface IQuestion
    {
        static abstract bool IsAny { get; }
    }

    public int NodeCount => _store.NodeCount;

    public int PacketCount => _store.PacketCount;

    /// <summary>Whether any triangle is hit from the origin to a distance [m], either side and both ends counting.</summary>
    /// <param name="origin">Start [m].</param>
    /// <param name="direction">Unit vector.</param>
    /// <param name="limit">How far [m].</param>
    /// <param name="except">Triangle that is not hit, that of the start; −1 for none.</param>
    public bool IsBlocked(Vector3 origin, Vector3 direction, float limit = float.PositiveInfinity, int except = -1)
    {
        var found = Find<AnyHit>(origin, direction, limit, except, out _);

        // Find holds pointers alone, which do not keep the block they point into.
        GC.KeepAlive(this);
        return found;
    }

    /// <summary>The nearest of the triangles that <see cref="IsBlocked"/> asks for; of equally near ones the smallest number.</summary>
    public WideHit? Closest(Vector3 origin, Vector3 direction, float limit = float.PositiveInfinity, int except = -1)
    {
        var found = Find<ClosestHit>(origin, direction, limit, except, out var hit);
        GC.KeepAlive(this);
        return found ? hit : null;
    }

    [SkipLocalsInit]
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private unsafe bool Find<TQuestion>(Vector3 origin, Vector3 direction, float limit, int except, out WideHit hit)
        where TQuestion : struct, IQuestion
    {
        hit = default;
        if (!float.IsFinite(origin.X + origin.Y + origin.Z)) throw new ArgumentException($"a ray cannot start at {origin}", nameof(origin));
        if (_store.NodeCount == 0) return false;

        // Distance to a plane of a box: coordinate × inverse + start.
        var inverse = Vector3.One / new Vector3(Finite(direction.X), Finite(direction.Y), Finite(direction.Z));
        var (inverseX, inverseY, inverseZ) = (Vector256.Create(inverse.X), Vector256.Create(inverse.Y), Vector256.Create(inverse.Z));
        var (startX, startY, startZ) = (Vector256.Create(-origin.X * inverse.X), Vector256.Create(-origin.Y * inverse.Y), Vector256.Create(-origin.Z * inverse.Z));

        // A component below zero meets the high side first. Without branches: no guess is right about a hemisphere.
        var (signX, signY, signZ) = (Sign(inverse.X), Sign(inverse.Y), Sign(inverse.Z));
        nint nearX = 3 * Width * signX, nearY = Width * (1 + (3 * signY)), nearZ = Width * (2 + (3 * signZ));
        nint farX = (3 * Width) - nearX, farY = (5 * Width) - nearY, farZ = (7 * Width) - nearZ;
        var orderShift = 3 * (signX + (2 * signY) + (4 * signZ));
        var (found, end) = (-1, Vector256.Create(limit));

        // Links not yet looked at, and in the question for the closest where their boxes begin.
        var links = stackalloc int[StackSize];
        var begins = stackalloc float[StackSize];
        nint top = 0, link = 0;

        // In memory, not in registers, which the boxes need: origin, direction, direction backwards.
        var ray = stackalloc float[9];
        *(Vector3*)ray = origin;
        *(Vector3*)(ray + 3) = direction;
        *(Vector3*)(ray + 6) = -direction;
        var nodes = _nodes;
        var packets = _packets;
        var squeezes = _squeezes;
        while (true)
        {
            if (link >= 0)
            {
                var node = nodes + (link * WideStore.NodeSize);
                var near = Vector256.MaxNative(
                    Vector256.MaxNative(
                        Vector256.FusedMultiplyAdd(Vector256.Load(node + nearX), inverseX, startX),
                        Vector256.FusedMultiplyAdd(Vector256.Load(node + nearY), inverseY, startY)),
                    Vector256.MaxNative(Vector256.FusedMultiplyAdd(Vector256.Load(node + nearZ), inverseZ, startZ), Vector256<float>.Zero));
                var far = Vector256.MinNative(
                    Vector256.MinNative(
                        Vector256.FusedMultiplyAdd(Vector256.Load(node + farX), inverseX, startX),
                        Vector256.FusedMultiplyAdd(Vector256.Load(node + farY), inverseY, startY)),
                    Vector256.MinNative(Vector256.FusedMultiplyAdd(Vector256.Load(node + farZ), inverseZ, startZ), end));
                var met = Vector256.LessThanOrEqual(near, far);
                var lanes = met.ExtractMostSignificantBits();
                if (lanes != 0)
                {
                    var children = (int*)(node + WideStore.ChildrenAt);
                    if (TQuestion.IsAny)
                    {
                        // In the order of the tree. Nearest first costs more than it saves, and a loop over the lanes, though its
                        // branches are guessed, less than a squeeze without branches: rays of one leaf go the same ways.
                        link = children[BitOperations.TrailingZeroCount(lanes)];
                        for (lanes &= lanes - 1; lanes != 0; lanes &= lanes - 1)
                        {
                            links[top++] = (int)link;
                            link = children[BitOperations.TrailingZeroCount(lanes)];
                        }

                        continue;
                    }

                    if ((lanes & (lanes - 1)) == 0)
                    {
                        link = children[BitOperations.TrailingZeroCount(lanes)];
                        continue;
                    }

                    // Farthest first, so that the nearest is on top.
                    var order = Vector256.ShiftRightLogical(Vector256.Load((int*)(node + WideStore.OrdersAt)), orderShift) & Vector256.Create(7);
                    lanes = Vector256.ShuffleNative(met, order).ExtractMostSignificantBits();
                    var squeeze = Vector256.ShuffleNative(order, Vector256.Load(squeezes + (Width * lanes)));
                    Vector256.ShuffleNative(Vector256.Load(children), squeeze).Store(links + top);
                    Vector256.ShuffleNative(near, squeeze).Store(begins + top);
                    top += BitOperations.PopCount(lanes) - 1;
                    link = links[top];
                    continue;
                }
            }
            else
            {
                var packet = packets + (~link * WideStore.PacketSize);
                var lanes = Meet(packet, ray, end, out var distance, out var size);
                if (lanes != 0)
                {
                    var triangles = Vector256.Load((int*)(packet + WideStore.TrianglesAt));
                    var valid = Vector256.GreaterThan(size, Vector256<float>.Zero).AsInt32() & ~Vector256.Equals(triangles, Vector256.Create(except));
                    lanes &= valid.ExtractMostSignificantBits();
                    if (TQuestion.IsAny && lanes != 0) return true;
                    if (!TQuestion.IsAny && lanes != 0)
                    {
                        distance /= size;
                        for (; lanes != 0; lanes &= lanes - 1)
                        {
                            var lane = BitOperations.TrailingZeroCount(lanes);
                            if (distance[lane] > limit || (distance[lane] == limit && found >= 0 && triangles[lane] > found)) continue;
                            (limit, found) = (distance[lane], triangles[lane]);
                        }

                        end = Vector256.Create(limit);
                    }
                }
            }

            do
            {
                if (top == 0)
                {
                    hit = new WideHit(found, limit);
                    return found >= 0;
                }

                link = links[--top];
            }
            while (!TQuestion.IsAny && begins[top] > limit);
        }
    }

    // Möller & Trumbore 1997, doi:10.1080/10867651.1997.10487468, without its division: with corner a, edges e and f, normal n = e × f and
    // r = (a − origin) × direction, the ray meets the plane at n·(a − origin) / n·direction, at shares r·f and −r·e of n·direction
    // along the edges. All are multiplied by the sign of n·direction here, and divided by nothing.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static unsafe uint Meet(
        float* packet, float* ray, Vector256<float> end, out Vector256<float> distance, out Vector256<float> size)
    {
        var toX = Vector256.Load(packet) - Vector256.Create(ray[0]);
        var toY = Vector256.Load(packet + Width) - Vector256.Create(ray[1]);
        var toZ = Vector256.Load(packet + (2 * Width)) - Vector256.Create(ray[2]);
        var turnX = Vector256.FusedMultiplyAdd(toY, Vector256.Create(ray[5]), toZ * Vector256.Create(ray[7]));
        var turnY = Vector256.FusedMultiplyAdd(toZ, Vector256.Create(ray[3]), toX * Vector256.Create(ray[8]));
        var turnZ = Vector256.FusedMultiplyAdd(toX, Vector256.Create(ray[4]), toY * Vector256.Create(ray[6]));
        var facing = Dot(packet + (9 * Width), Vector256.Create(ray[3]), Vector256.Create(ray[4]), Vector256.Create(ray[5]));
        var sign = facing & Vector256.Create(-0f);
        size = Vector256.Abs(facing);
        var along1 = Dot(packet + (6 * Width), turnX, turnY, turnZ) ^ sign;
        var against2 = Dot(packet + (3 * Width), turnX, turnY, turnZ) ^ sign;
        distance = Dot(packet + (9 * Width), toX, toY, toZ) ^ sign;
        return (Vector256.GreaterThanOrEqual(along1, Vector256<float>.Zero)
            & Vector256.LessThanOrEqual(against2, Vector256<float>.Zero)
            & Vector256.LessThanOrEqual(along1 - against2, size)
            & Vector256.GreaterThanOrEqual(distance, Vector256<float>.Zero)
            & Vector256.LessThanOrEqual(distance, end * size)).ExtractMostSignificantBits();
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static unsafe Vector256<float> Dot(float* vectors, Vector256<float> x, Vector256<float> y, Vector256<float> z) =>
        Vector256.FusedMultiplyAdd(
            Vector256.Load(vectors),
            x,
            Vector256.FusedMultiplyAdd(Vector256.Load(vectors + Width), y, Vector256.Load(vectors + (2 * Width)) * z));

    private static float Finite(float component) =>
        Math.Abs(component) >= LeastComponent ? component : MathF.CopySign(LeastComponent, component);

    private static int Sign(float number) => (int)(BitConverter.SingleToUInt32Bits(number) >> 31);

    private readonly struct AnyHit : IQuestion
    {
        public static bool IsAny => true;
    }

    private readonly struct ClosestHit : IQuestion
    {
        public static bool IsAny => false;
    }
}
