namespace CanopySim.Training;

/// <summary>
/// A sheet of foliage of one row: the cordon that bears its shoots, and the way they are led from it. An undivided canopy has one,
/// a divided one two. Heights are over the ground, distances across from the middle of the row, positive to the right (x).
/// </summary>
/// <param name="Index">Number of the wall in its row, from 0.</param>
/// <param name="CordonAcross">Where the cordon runs across the row [m].</param>
/// <param name="CordonHeight">Height of the cordon [m].</param>
/// <param name="Tilt">Angle from upright in which the foliage is led away from the cordon, positive to the right [rad]: 0 up, π down.</param>
/// <param name="Width">Width that the wires leave to the shoots, square to the wall [m]; of a roof, across the row.</param>
public sealed record FoliageWall(int Index, double CordonAcross, double CordonHeight, double Tilt, double Width)
{
    private const double FlatWithin = 0.3;

    /// <summary>True where shoots lie as a roof: a probe comes from below.</summary>
    public bool IsFlat => Math.Abs(Math.Cos(Tilt)) < FlatWithin;

    /// <summary>True where shoots are led down from the cordon.</summary>
    public bool Hangs => Math.Cos(Tilt) <= -FlatWithin;

    /// <summary>Where the fruit hangs.</summary>
    public FruitZone FruitZone => FruitZone.Of(this);
}
