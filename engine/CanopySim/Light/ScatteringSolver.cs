using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Light;

/// <summary>
/// Light between faces, eight moments of one band at a time: each face's incident power is what sun and sky bring plus what
/// its senders radiate, and it radiates its reflected share and the transmitted share of the face behind it. Gauss-Seidel over
/// surfaces. Quantities are per link: power [W] divided by the power that one link carries per unit of radiosity [m²].
/// </summary>
internal sealed class ScatteringSolver(LinkMatrix matrix, LightNodes nodes, BandOptics optics)
{
    public const int Lanes = 8;

    private const int MaximumSweeps = 2000;

    private readonly float[] _radiosity = new float[nodes.Count * Lanes];
    private readonly float[] _inverseLinks =
        Array.ConvertAll(matrix.LinksOfNode, links => links > 0 ? (float)(1 / links) : 0);

    /// <summary>Radiosity [W m⁻²] by node and lane.</summary>
    public ReadOnlySpan<float> Radiosity => _radiosity;

    /// <summary>Sweeps that the last solution took.</summary>
    public int Sweeps { get; private set; }

    /// <param name="source">Incident power from sun and sky by node and lane.</param>
    /// <param name="incident">Tells when to stop: all power that comes in, by lane.</param>
    /// <param name="tolerance">Share of it that a last sweep may still move.</param>
    /// <param name="received">Becomes the incident power by node and lane, scattered light included.</param>
    public void Solve(float[] source, ReadOnlySpan<double> incident, double tolerance, float[] received)
    {
        Array.Clear(_radiosity);
        for (Sweeps = 1; Sweeps <= MaximumSweeps; Sweeps++)
        {
            var moved = Sweep(source);
            var settled = true;
            for (var lane = 0; lane < Lanes; lane++) settled &= moved[lane] <= tolerance * incident[lane];
            if (settled) break;
        }

        if (Sweeps > MaximumSweeps) throw new InvalidOperationException($"light did not settle in {MaximumSweeps} sweeps");
        for (var node = 0; node < nodes.Count; node++) Receive(node, source).StoreUnsafe(ref received[node * Lanes]);
    }

    // Returns the power that the sweep changed, by lane.
    private Vector256<float> Sweep(float[] source)
    {
        var moved = Vector256<float>.Zero;
        for (var node = 0; node < nodes.FirstGround; node += 2)
        {
            var upper = Receive(node, source);
            if (optics.Transmittance[node] == 0 && optics.Reflectance[node + 1] == 0)
            {
                moved += Send(node, upper * optics.Reflectance[node]);
                continue;
            }

            var lower = Receive(node + 1, source);
            moved += Send(node, (upper * optics.Reflectance[node]) + (lower * optics.Transmittance[node]));
            moved += Send(node + 1, (lower * optics.Reflectance[node + 1]) + (upper * optics.Transmittance[node + 1]));
        }

        for (var node = nodes.FirstGround; node < nodes.Count; node++)
            moved += Send(node, Receive(node, source) * optics.Reflectance[node]);
        return moved;
    }

    private Vector256<float> Receive(int node, float[] source)
    {
        // Two sums: each multiply-add waits for the one before it in its chain.
        var (even, odd) = (Vector256.LoadUnsafe(ref source[node * Lanes]), Vector256<float>.Zero);
        ref var radiosity = ref MemoryMarshal.GetArrayDataReference(_radiosity);
        var (start, end) = (matrix.Starts[node], matrix.Starts[node + 1]);
        var senders = matrix.Senders.AsSpan(start, end - start);
        var counts = matrix.Counts.AsSpan(start, end - start);
        var i = 0;
        for (; i + 1 < senders.Length; i += 2)
        {
            even = Vector256.FusedMultiplyAdd(Vector256.Create(counts[i]), Sent(ref radiosity, senders[i]), even);
            odd = Vector256.FusedMultiplyAdd(Vector256.Create(counts[i + 1]), Sent(ref radiosity, senders[i + 1]), odd);
        }

        if (i < senders.Length) even = Vector256.FusedMultiplyAdd(Vector256.Create(counts[i]), Sent(ref radiosity, senders[i]), even);
        return even + odd;

        static Vector256<float> Sent(ref float radiosity, int node) => Vector256.LoadUnsafe(ref Unsafe.Add(ref radiosity, node * Lanes));
    }

    private Vector256<float> Send(int node, Vector256<float> power)
    {
        var radiosity = power * _inverseLinks[node];
        ref var place = ref _radiosity[node * Lanes];
        var change = Vector256.Abs(radiosity - Vector256.LoadUnsafe(ref place)) * (float)matrix.LinksOfNode[node];
        radiosity.StoreUnsafe(ref place);
        return change;
    }
}
