using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// The smaller and the larger of two, lane by lane: a comparison and a choice, so that the bits do not hang on what a processor
/// makes of zeros of either sign.
/// </summary>
internal static class Lanes
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> Max(Vector256<float> a, Vector256<float> b) =>
        Vector256.ConditionalSelect(Vector256.GreaterThan(a, b), a, b);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> Min(Vector256<float> a, Vector256<float> b) =>
        Vector256.ConditionalSelect(Vector256.LessThan(a, b), a, b);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> Clamp(Vector256<float> x, Vector256<float> low, Vector256<float> high) => Max(Min(x, high), low);
}
