using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// 2^x of eight floats, |x| ≤ 120 (not checked): x = n + f, n whole, |f| ≤ ½, and 2^f = 1 + f p(f), p of degree 4 through the
/// Chebyshev nodes: 2e-7 off at most before rounding. Only sums and products, no fused ones: with or without vector hardware
/// the bits are the same, which the exponential of a platform does not promise.
/// </summary>
internal static class VectorExponential
{
    /// <summary>log₂ e: what turns an exponent of e into one of 2.</summary>
    public const double PerNatural = 1.4426950408889634;

    // Added to a float far under it, 1.5 · 2²³ leaves the nearest integer in the low bits.
    private const float Rounder = 12_582_912;

    private const float P0 = 0.693147182f;
    private const float P1 = 0.240223497f;
    private const float P2 = 0.0555038117f;
    private const float P3 = 0.00966636837f;
    private const float P4 = 0.00133813021f;

    private const int MantissaBits = 23;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> PowerOfTwo(Vector256<float> x)
    {
        var shifted = x + Vector256.Create(Rounder);
        var f = x - (shifted - Vector256.Create(Rounder));
        var p = (f * P4) + Vector256.Create(P3);
        p = (p * f) + Vector256.Create(P2);
        p = (p * f) + Vector256.Create(P1);
        p = (p * f) + Vector256.Create(P0);
        var power = (p * f) + Vector256<float>.One;

        // n into the exponent: the rest of the rounder's bits is shifted out.
        return (power.AsInt32() + Vector256.ShiftLeft(shifted.AsInt32(), MantissaBits)).AsSingle();
    }
}
