namespace CanopySim.Carbon;

/// <summary>
/// What a vine holds in its permanent parts, and how well its sinks were fed lately. The two supply indices are smoothed over
/// a week; one drives nodes, the other laterals, set and the leaf's sink factor.
/// </summary>
public sealed class VineCarbon(double perennialDryMass, double reserves)
{
    private const double SmoothingDays = 7;

    /// <summary>Dry mass of trunk, cordon and roots at the start, to which the shares of reserves refer [g].</summary>
    public double ReferenceDryMass { get; } = perennialDryMass;

    /// <summary>Dry mass of trunk, cordon and roots without reserves [g].</summary>
    public double PerennialDryMass { get; internal set; } = perennialDryMass;

    /// <summary>Starch and sugars in trunk, cordon and roots [g CH₂O].</summary>
    public double Reserves { get; internal set; } = reserves;

    /// <summary>Carbon that main axes got over what they could use [1].</summary>
    public double MainSupplyIndex { get; private set; } = 1;

    /// <summary>Carbon at hand over what main axes, half the laterals, fruit and half the thickening could use [1].</summary>
    public double SupplyIndex { get; private set; } = 1;

    internal void SmoothIndices(double main, double all)
    {
        // An index far above 1 says only "ample": what lies beyond 2 carries no more.
        MainSupplyIndex += (main - MainSupplyIndex) / SmoothingDays;
        SupplyIndex += (Math.Clamp(all, 0, 2) - SupplyIndex) / SmoothingDays;
    }
}
