using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// Eight leaves of one hour, a lane each: what a leaf brings along, and where its solution stands. Units are those of
/// <see cref="LeafProblem"/>.
/// </summary>
internal struct LeafLanes
{
    // What a leaf brings along, set by LeafLanesInput.
    public Vector256<float> UsefulLight;
    public Vector256<float> Capacity;
    public Vector256<float> RespirationFactor;
    public Vector256<float> Slope;
    public Vector256<float> BoundaryVapor;
    public Vector256<float> HalfPerBoundary;
    public Vector256<float> BoundaryCo2Resistance;
    public Vector256<float> Sensible;
    public Vector256<float> NetRadiationAtAir;

    // What its temperature makes of it, set by LeafLanesRates.
    public Vector256<float> Temperature;
    public Vector256<float> Exponent;
    public Vector256<float> PerShifted;
    public Vector256<float> Vcmax;
    public Vector256<float> QuarterTransport;
    public Vector256<float> Respiration;
    public Vector256<float> CompensationPoint;
    public Vector256<float> Michaelis;
    public Vector256<float> Saturation;
    public Vector256<float> SaturationSlope;
    public Vector256<float> SlopeTerm;

    // Where CO2 between the cells stands, moved by LeafLanesCarbon.
    public Vector256<float> IntercellularCo2;
    public Vector256<float> Co2Change;
    public Vector256<float> Net;
    public Vector256<float> NetByCi;
    public Vector256<float> Stomatal;
    public Vector256<float> StomatalByNet;
    public Vector256<float> StomatalResistance;

    // Where its temperature stands, moved by LeafLanesHeat; Last… belong to the temperature before.
    public Vector256<float> Decline;
    public Vector256<float> LastTemperature;
    public Vector256<float> LastSaturation;
    public Vector256<float> LastResidual;
    public Vector256<float> LastCo2;
    public Vector256<float> LastCo2Change;
    public Vector256<float> LastNet;
    public Vector256<float> LastRespiration;
    public Vector256<float> LastStomatal;
    public Vector256<float> Transpiration;
}

/// <summary>
/// 64 leaves of one hour: enough for the divisions of one eight to run beside those of the next. No lane looks at another, so a
/// leaf's bits do not depend on place or company.
/// </summary>
internal sealed class LeafBlock
{
    /// <summary>Leaves in a block.</summary>
    public const int Leaves = 64;

    private const int Width = 8;

    private const int CacheLine = 64;

    // Pinned, so that what is put at the start of a cache line stays there.
    private readonly byte[] _store =
        GC.AllocateArray<byte>((Unsafe.SizeOf<LeafLanes>() * (Leaves / Width)) + CacheLine, pinned: true);

    private readonly int _start;

    public LeafBlock()
    {
        var address = (long)Marshal.UnsafeAddrOfPinnedArrayElement(_store, 0);
        _start = (int)((CacheLine - (address % CacheLine)) % CacheLine);
    }

    public Span<LeafLanes> Eights =>
        MemoryMarshal.Cast<byte, LeafLanes>(_store.AsSpan(_start, Unsafe.SizeOf<LeafLanes>() * (Leaves / Width)));

    /// <summary>The lanes of a quantity one by one.</summary>
    public static Span<float> Each(ref Vector256<float> lanes) =>
        MemoryMarshal.Cast<Vector256<float>, float>(new Span<Vector256<float>>(ref lanes));
}
