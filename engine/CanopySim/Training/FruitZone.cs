namespace CanopySim.Training;

/// <summary>
/// Heights between which the fruit hangs: 0.4 m over a hedge's cordon, 0.05 to 0.45 m under the cordon of forms whose shoots hang. Common
/// practice, no source.
/// </summary>
/// <param name="CordonHeight">Height of the cordon over the ground [m].</param>
/// <param name="From">Lower end, over the cordon [m].</param>
/// <param name="To">Upper end, over the cordon [m].</param>
public readonly record struct FruitZone(double CordonHeight, double From, double To)
{
    public static FruitZone Of(Trellis trellis) => trellis.Form == TrellisForm.UprightHedge
        ? new FruitZone(trellis.CordonHeightOrDefault, 0, 0.4)
        : new FruitZone(trellis.CordonHeightOrDefault, -0.45, -0.05);

    /// <summary>Height over the ground at a share of the way from the lower to the upper end [m].</summary>
    public double Height(double share) => CordonHeight + From + ((To - From) * share);
}
