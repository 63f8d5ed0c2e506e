using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// exp(x) of eight floats, from −87 to 88: x = n ln 2 + r, |r| ≤ ln 2 / 2 (Cody &amp; Waite 1980), exp(r) = 1 + r + r² p(r), p
/// of degree 4 through the Chebyshev nodes. Only sums and products, no fused ones: with or without vector hardware the
/// bits are the same, which the exponential of a platform does not promise.
/// </summary>
internal static class VectorExponential
{
    private const float Lowest = -87;
    private const float Highest = 88;

    // Added to a float far under it, 1.5 · 2²³ leaves the nearest integer in the low bits.
    private const float Rounder = 12_582_912;

    // ln 2 in two parts; the first has so few digits that n times it is exact.
    private const float Ln2High = 0.693359375f;
    private const float Ln2Low = -2.12194440e-4f;
    private const float PerLn2 = 1.44269504f;

    private const float C0 = 0.5f;
    private const float C1 = 0.166665763f;
    private const float C2 = 0.0416665561f;
    private const float C3 = 0.00836317893f;
    private const float C4 = 0.0013926184f;

    private const int MantissaBits = 23;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> Of(Vector256<float> x)
    {
        x = Lanes.Clamp(x, Vector256.Create(Lowest), Vector256.Create(Highest));
        return OfBounded(x);
    }

    /// <summary>The same for an exponent that cannot leave the range.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> OfBounded(Vector256<float> x)
    {
        var shifted = (x * PerLn2) + Vector256.Create(Rounder);
        var n = shifted - Vector256.Create(Rounder);
        var r = x - (n * Ln2High) - (n * Ln2Low);
        var p = (r * C4) + Vector256.Create(C3);
        p = (p * r) + Vector256.Create(C2);
        p = (p * r) + Vector256.Create(C1);
        p = (p * r) + Vector256.Create(C0);
        var power = (p * (r * r)) + r + Vector256<float>.One;
        return (power.AsInt32() + Vector256.ShiftLeft(shifted.AsInt32(), MantissaBits)).AsSingle();
    }
}
