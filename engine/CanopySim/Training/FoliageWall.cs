namespace CanopySim.Training;

/// <summary>
/// A sheet of foliage of one row: the cordon that bears its shoots, and the way they are led from it. An undivided
/// canopy has one, a divided one two. Heights are over the ground, distances across from the middle of the row,
/// positive to the right (x).
/// </summary>
/// <param name="Index">Number of the wall in its row, from 0.</param>
/// <param name="CordonAcross">Where the cordon runs across the row [m].</param>
/// <param name="CordonHeight">Height of the cordon [m].</param>
/// <param name="Tilt">Angle from upright in which the foliage is led away from the cordon, positive to the right [rad]:
/// 0 up, π down.</param>
/// <param name="Width">Width that the wires leave to the shoots, square to the wall [m]; of a roof, across the
/// row.</param>
public sealed record FoliageWall(int Index, double CordonAcross, double CordonHeight, double Tilt, double Width)
{
    private const double FlatWithin = 0.3;

    /// <summary>
    /// Where wires end that hold a wall led up, and the height of a roof [m]; the cordon's height where nothing holds.
    /// </summary>
    public double TopHeight { get; init; } = CordonHeight;

    /// <summary>Pairs of catch wires from the lowest up; none where the width is the same all the way.</summary>
    public IReadOnlyList<CatchWirePair> CatchWires { get; init; } = [];

    /// <summary>False where shoots bend by their own weight alone: a free sprawl and a bush.</summary>
    public bool IsHeld { get; init; } = true;

    /// <summary>
    /// 1 or −1 where all shoots of a roof are led to the right or to the left, 0 where to both sides in turn.
    /// </summary>
    public int OnlySide { get; init; }

    /// <summary>True where shoots lie as a roof: a probe comes from below.</summary>
    public bool IsFlat => Math.Abs(Math.Cos(Tilt)) < FlatWithin;

    /// <summary>True where shoots are led down from the cordon.</summary>
    public bool Hangs => Math.Cos(Tilt) <= -FlatWithin;

    /// <summary>Where the fruit hangs.</summary>
    public FruitZone FruitZone => FruitZone.Of(this);

    /// <summary>Middle of a wall led up, across the row at a height over the ground [m].</summary>
    public double MiddleAt(double height) => CordonAcross + ((height - CordonHeight) * Math.Tan(Tilt));

    /// <summary>
    /// Width left to shoots at a height over the ground [m], even between the pairs of catch wires, the same beyond
    /// them.
    /// </summary>
    public double WidthAt(double height)
    {
        if (CatchWires.Count == 0) return Width;
        if (height <= CatchWires[0].Height) return CatchWires[0].Distance;
        for (var i = 1; i < CatchWires.Count; i++)
        {
            if (height > CatchWires[i].Height) continue;
            var (low, high) = (CatchWires[i - 1], CatchWires[i]);
            return low.Distance + ((high.Distance - low.Distance) * (height - low.Height) / (high.Height - low.Height));
        }

        return CatchWires[^1].Distance;
    }
}
