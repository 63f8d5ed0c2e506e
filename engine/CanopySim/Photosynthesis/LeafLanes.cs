using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// 64 leaves of one hour, a quantity an array and eight leaves a vector: what a leaf brings along, and where its solution
/// stands. A leaf's lane never looks at another, so its bits do not depend on place or company.
/// </summary>
internal sealed class LeafLanes
{
    /// <summary>Leaves in a block: enough for divisions of one vector to run beside those of the next.</summary>
    public const int Count = Vectors * Width;

    public const int Vectors = 8;

    private const int Width = 8;

    // What a leaf brings along, set by LeafLanesInput.
    public readonly Vector256<float>[] UsefulLight = Make();
    public readonly Vector256<float>[] Capacity = Make();
    public readonly Vector256<float>[] RespirationFactor = Make();
    public readonly Vector256<float>[] Slope = Make();
    public readonly Vector256<float>[] BoundaryVapor = Make();
    public readonly Vector256<float>[] BoundaryCo2Resistance = Make();
    public readonly Vector256<float>[] Sensible = Make();
    public readonly Vector256<float>[] NetRadiationAtAir = Make();

    // What its temperature makes of it, set by LeafLanesRates.
    public readonly Vector256<float>[] Temperature = Make();
    public readonly Vector256<float>[] Vcmax = Make();
    public readonly Vector256<float>[] QuarterTransport = Make();
    public readonly Vector256<float>[] Respiration = Make();
    public readonly Vector256<float>[] CompensationPoint = Make();
    public readonly Vector256<float>[] Michaelis = Make();
    public readonly Vector256<float>[] Saturation = Make();
    public readonly Vector256<float>[] SaturationSlope = Make();
    public readonly Vector256<float>[] SlopeTerm = Make();

    // Where CO2 between the cells stands, moved by LeafLanesCarbon.
    public readonly Vector256<float>[] IntercellularCo2 = Make();
    public readonly Vector256<float>[] Co2Change = Make();
    public readonly Vector256<float>[] Net = Make();
    public readonly Vector256<float>[] Stomatal = Make();

    // Where its temperature stands, moved by LeafLanesHeat; Last… belong to the temperature before.
    public readonly Vector256<float>[] LastTemperature = Make();
    public readonly Vector256<float>[] LastResidual = Make();
    public readonly Vector256<float>[] Decline = Make();
    public readonly Vector256<float>[] LastCo2 = Make();
    public readonly Vector256<float>[] LastNet = Make();
    public readonly Vector256<float>[] LastRespiration = Make();
    public readonly Vector256<float>[] LastStomatal = Make();
    public readonly Vector256<float>[] Transpiration = Make();

    private static Vector256<float>[] Make() => new Vector256<float>[Vectors];
}
