using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>
/// Light between faces, sixteen moments of one band at a time: each face's incident power is what sun and sky bring plus what
/// its senders radiate, and it radiates its reflected share and the transmitted share of the face behind it. Gauss-Seidel over
/// surfaces with over-relaxation. Quantities are per link: power [W] divided by the power that one link carries per unit of
/// radiosity [m²].
/// </summary>
internal sealed class ScatteringSolver
{
    public const int Lanes = 2 * Half;

    private const int Half = 8;
    private const int MaximumSweeps = 2000;

    // Where nothing absorbs and blades only let light through, over-relaxed sweeps may go round in circles; plain ones end it.
    private const int OverRelaxedSweeps = 50;

    // Share of what a blade sends that other blades catch. Assumed, and it only decides how fast light settles.
    private const double CaughtShare = 0.85;

    private readonly LinkMatrix _matrix;
    private readonly LightNodes _nodes;
    private readonly BandOptics _optics;
    private readonly float _relaxation;
    private readonly float _scatteredAgain;
    private readonly float[] _inverseLinks;

    private readonly float[] _lines;
    private readonly int _firstLine;

    public ScatteringSolver(LinkMatrix matrix, LightNodes nodes, BandOptics optics, SolverArrays arrays)
    {
        (_matrix, _nodes, _optics) = (matrix, nodes, optics);
        _inverseLinks = matrix.InverseLinks;
        (_lines, _firstLine) = (arrays.Lines, arrays.FirstLine);

        // The best over-relaxation of a matrix whose Jacobi iteration shrinks errors by s a sweep: 2 / (1 + √(1 − s²)); Young
        // 1954, Trans. Am. Math. Soc. 76:92-111, from memory.
        var shrink = CaughtShare * optics.SentByBlade;
        _relaxation = (float)(2 / (1 + Math.Sqrt(1 - (shrink * shrink))));
        _scatteredAgain = (float)(shrink / (1 - shrink));
    }

    /// <summary>Radiosity [W m⁻²] by node and lane.</summary>
    public ReadOnlySpan<float> Radiosity => _lines.AsSpan(_firstLine, _nodes.Count * Lanes);

    /// <summary>Sweeps that the last solution took.</summary>
    public int Sweeps { get; private set; }

    /// <param name="source">Incident power from sun and sky by node and lane.</param>
    /// <param name="incident">Tells when to stop: all power that comes in, by lane.</param>
    /// <param name="tolerance">Share of it that a last sweep may still move.</param>
    /// <param name="received">Becomes the incident power by node and lane, scattered light included.</param>
    public void Solve(float[] source, ReadOnlySpan<double> incident, double tolerance, float[] received)
    {
        SendOnce(source);
        Span<float> moved = stackalloc float[Lanes];
        for (Sweeps = 1; Sweeps <= MaximumSweeps; Sweeps++)
        {
            Sweep(source, received, Sweeps > OverRelaxedSweeps ? 1 : _relaxation).Store(ref moved[0]);
            var settled = true;
            for (var lane = 0; lane < Lanes; lane++) settled &= moved[lane] <= tolerance * incident[lane];
            if (settled) break;
        }

        if (Sweeps > MaximumSweeps) throw new InvalidOperationException($"light did not settle in {MaximumSweeps} sweeps");
    }

    // A first guess: what sun and sky alone make each face send, and on top the same for all that this makes in a cloud of blades.
    private void SendOnce(float[] source)
    {
        _lines.AsSpan(_firstLine, _nodes.Count * Lanes).Clear();
        var (sent, links, ignored) = (default(Pair), 0.0, default(Pair));
        for (var node = 0; node < _nodes.FirstGround; node += 2)
        {
            SendBoth(node, Own(node, source), Own(node + 1, source), 1, ref ignored);
            sent = sent.Plus(Radiated(node)).Plus(Radiated(node + 1));
            links += _matrix.LinksOfNode[node] + _matrix.LinksOfNode[node + 1];
        }

        if (links == 0) return;
        var again = sent.Times((float)(_scatteredAgain / links));
        for (var node = 0; node < _nodes.Count; node++)
        {
            var share = node < _nodes.FirstGround ? _optics.Reflectance[node] + _optics.Transmittance[node] : 0;
            if (share == 0) continue;
            ref var place = ref Line(node);
            new Pair(Vector256.LoadUnsafe(ref place) + again.First, Vector256.LoadUnsafe(ref place, Half) + again.Second).Store(ref place);
        }

        Pair Radiated(int node) => new Pair(Vector256.LoadUnsafe(ref Line(node)), Vector256.LoadUnsafe(ref Line(node), Half)).Times((float)_matrix.LinksOfNode[node]);

        static Pair Own(int node, float[] source) => new(Vector256.LoadUnsafe(ref source[node * Lanes]), Vector256.LoadUnsafe(ref source[node * Lanes], Half));
    }

    // Returns the power that the sweep changed, by lane. What nodes received in a last sweep stands: later ones have moved since by no
    // more than the tolerance.
    private Pair Sweep(float[] source, float[] received, float relaxation)
    {
        var moved = default(Pair);
        for (var node = 0; node < _nodes.FirstGround; node += 2)
        {
            var upper = Receive(node, source);
            upper.Store(ref received[node * Lanes]);
            var lower = Receive(node + 1, source);
            lower.Store(ref received[(node + 1) * Lanes]);
            SendBoth(node, upper, lower, relaxation, ref moved);
        }

        for (var node = _nodes.FirstGround; node < _nodes.Count; node++)
        {
            var power = Receive(node, source);
            power.Store(ref received[node * Lanes]);
            Send(node, power.Times(_optics.Reflectance[node]), relaxation, ref moved);
        }

        return moved;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void SendBoth(int node, Pair upper, Pair lower, float relaxation, ref Pair moved)
    {
        Send(node, upper.Times(_optics.Reflectance[node]).Plus(lower.Times(_optics.Transmittance[node])), relaxation, ref moved);
        Send(node + 1, lower.Times(_optics.Reflectance[node + 1]).Plus(upper.Times(_optics.Transmittance[node + 1])), relaxation, ref moved);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private Pair Receive(int node, float[] source)
    {
        // Two sums a half: each multiply-add waits for the one before it in its chain.
        ref var own = ref source[node * Lanes];
        var (evenFirst, evenSecond) = (Vector256.LoadUnsafe(ref own), Vector256.LoadUnsafe(ref own, Half));
        var (oddFirst, oddSecond) = (Vector256<float>.Zero, Vector256<float>.Zero);
        ref var radiosity = ref Line(0);
        var (start, end) = (_matrix.Starts[node], _matrix.Starts[node + 1]);
        ref var senders = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_matrix.Senders), start);
        ref var counts = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_matrix.Counts), start);
        var i = 0;
        for (; i + 1 < end - start; i += 2)
        {
            ref var even = ref Unsafe.Add(ref radiosity, Unsafe.Add(ref senders, i) * Lanes);
            ref var odd = ref Unsafe.Add(ref radiosity, Unsafe.Add(ref senders, i + 1) * Lanes);
            var (evenCount, oddCount) = (Vector256.Create(Unsafe.Add(ref counts, i)), Vector256.Create(Unsafe.Add(ref counts, i + 1)));
            evenFirst = Vector256.FusedMultiplyAdd(evenCount, Vector256.LoadUnsafe(ref even), evenFirst);
            evenSecond = Vector256.FusedMultiplyAdd(evenCount, Vector256.LoadUnsafe(ref even, Half), evenSecond);
            oddFirst = Vector256.FusedMultiplyAdd(oddCount, Vector256.LoadUnsafe(ref odd), oddFirst);
            oddSecond = Vector256.FusedMultiplyAdd(oddCount, Vector256.LoadUnsafe(ref odd, Half), oddSecond);
        }

        if (i < end - start)
        {
            ref var last = ref Unsafe.Add(ref radiosity, Unsafe.Add(ref senders, i) * Lanes);
            var count = Vector256.Create(Unsafe.Add(ref counts, i));
            evenFirst = Vector256.FusedMultiplyAdd(count, Vector256.LoadUnsafe(ref last), evenFirst);
            evenSecond = Vector256.FusedMultiplyAdd(count, Vector256.LoadUnsafe(ref last, Half), evenSecond);
        }

        return new Pair(evenFirst + oddFirst, evenSecond + oddSecond);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Send(int node, Pair power, float relaxation, ref Pair moved)
    {
        ref var place = ref Line(node);
        var links = (float)_matrix.LinksOfNode[node];
        var first = Relaxed(Vector256.LoadUnsafe(ref place), power.First * _inverseLinks[node], relaxation);
        var second = Relaxed(Vector256.LoadUnsafe(ref place, Half), power.Second * _inverseLinks[node], relaxation);
        moved = new Pair(
            moved.First + (Vector256.Abs(first - Vector256.LoadUnsafe(ref place)) * links),
            moved.Second + (Vector256.Abs(second - Vector256.LoadUnsafe(ref place, Half)) * links));
        first.StoreUnsafe(ref place);
        second.StoreUnsafe(ref place, Half);
    }

    // A face that loses light from sweep to sweep must not overshoot into the negative.
    private static Vector256<float> Relaxed(Vector256<float> old, Vector256<float> next, float relaxation) =>
        Vector256.MaxNative(old + ((next - old) * relaxation), Vector256<float>.Zero);

    private ref float Line(int node) => ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_lines), _firstLine + (node * Lanes));

    private readonly struct Pair(Vector256<float> first, Vector256<float> second)
    {
        public readonly Vector256<float> First = first;
        public readonly Vector256<float> Second = second;

        public Pair Times(float factor) => new(First * factor, Second * factor);

        public Pair Plus(Pair other) => new(First + other.First, Second + other.Second);

        public void Store(ref float place)
        {
            First.StoreUnsafe(ref place);
            Second.StoreUnsafe(ref place, Half);
        }
    }
}
