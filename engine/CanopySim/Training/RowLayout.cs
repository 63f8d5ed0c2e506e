using CanopySim.Parameters;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>How rows and vines are laid out.</summary>
public sealed record RowLayout
{
    [Parameter("m", 0.8, 6, "Distance between rows.", Mark = Mark.Given)]
    public double Spacing { get; init; } = 2.4;

    [Parameter("m", 0.3, 6, "Distance between vines in the row.", Mark = Mark.Given)]
    public double VineSpacing { get; init; } = 1.5;

    [Parameter("deg", 0, 360, "Direction in which the row runs, clockwise from north.", Mark = Mark.Given)]
    public double Azimuth { get; init; }

    [Parameter("1", 1, 8, "Vines of a row that are grown one by one before it repeats itself.", Mark = Mark.Assumed)]
    public int VinesInCell { get; init; } = 1;

    [Parameter("1", 1, 4, "Rows that stand side by side, each with its own vines, before the block repeats itself.",
        Mark = Mark.Assumed)]
    public int RowsInCell { get; init; } = 1;

    /// <summary>All vines of the cell, row by row.</summary>
    public int VineCount => RowsInCell * VinesInCell;

    /// <summary>Number of the row in which a vine of the cell stands, from 0.</summary>
    public int RowOf(VineId vine) => vine.Value / VinesInCell;

    /// <summary>Where a row runs across the cell [m, horizontal]: the first at 0, the others to its right.</summary>
    public double AcrossOf(int row) => row * Spacing;

    /// <summary>Ground area of a vine [m²].</summary>
    public double GroundAreaPerVine => Spacing * VineSpacing;
}
