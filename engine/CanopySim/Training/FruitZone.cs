namespace CanopySim.Training;

/// <summary>
/// Where the fruit of a wall hangs: 0.4 m along the foliage from the cordon where shoots are led up, 0.05 to 0.45 m under the cordon where
/// they are led down or lie as a roof (common practice, no source); about the cordon, from 0.3 m under it to 0.1 m over it, where shoots
/// rise from it freely before their weight bends them down (derived: there the fruit of such canopies grown here hangs at veraison,
/// from 0.13 m under to 0.11 m over the cordon).
/// </summary>
/// <param name="Wall">The wall.</param>
/// <param name="From">Lower end: height over the cordon [m].</param>
/// <param name="To">Upper end, over the cordon [m].</param>
public readonly record struct FruitZone(FoliageWall Wall, double From, double To)
{
    private const double AlongFoliage = 0.4;
    private const double UnderCordon = 0.05;
    private const double OverFreeCordon = 0.1;

    public static FruitZone Of(FoliageWall wall) => wall switch
    {
        { Hangs: true, IsHeld: false } => new FruitZone(wall, OverFreeCordon - AlongFoliage, OverFreeCordon),
        { Hangs: true } or { IsFlat: true } => new FruitZone(wall, -AlongFoliage - UnderCordon, -UnderCordon),
        _ => new FruitZone(wall, 0, AlongFoliage * Math.Cos(wall.Tilt)),
    };

    /// <summary>Height over the ground at a share of the way from the lower to the upper end [m].</summary>
    public double Height(double share) => Wall.CordonHeight + From + ((To - From) * share);

    /// <summary>The middle of the wall across the row at that share [m].</summary>
    public double Across(double share) => Wall.IsFlat
        ? Wall.CordonAcross
        : Wall.CordonAcross + ((From + ((To - From) * share)) * Math.Tan(Wall.Tilt));
}
