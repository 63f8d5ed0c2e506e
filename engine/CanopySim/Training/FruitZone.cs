namespace CanopySim.Training;

/// <summary>
/// Where the fruit of a wall hangs: 0.4 m along the foliage from the cordon where shoots are led up, 0.05 to 0.45 m
/// under the cordon where they hang or lie as a roof. Common practice, no source.
/// </summary>
/// <param name="Wall">The wall.</param>
/// <param name="From">Lower end: height over the cordon [m].</param>
/// <param name="To">Upper end, over the cordon [m].</param>
public readonly record struct FruitZone(FoliageWall Wall, double From, double To)
{
    private const double AlongFoliage = 0.4;
    private const double UnderCordon = 0.05;

    public static FruitZone Of(FoliageWall wall) => wall.Hangs || wall.IsFlat
        ? new FruitZone(wall, -AlongFoliage - UnderCordon, -UnderCordon)
        : new FruitZone(wall, 0, AlongFoliage * Math.Cos(wall.Tilt));

    /// <summary>Height over the ground at a share of the way from the lower to the upper end [m].</summary>
    public double Height(double share) => Wall.CordonHeight + From + ((To - From) * share);

    /// <summary>The middle of the wall across the row at that share [m].</summary>
    public double Across(double share) => Wall.IsFlat
        ? Wall.CordonAcross
        : Wall.CordonAcross + ((From + ((To - From) * share)) * Math.Tan(Wall.Tilt));
}
