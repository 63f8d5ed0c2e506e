using CanopySim.Parameters;

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

    [Parameter("1", 1, 8, "Vines that are grown one by one before the row repeats itself.", Mark = Mark.Assumed)]
    public int VinesInCell { get; init; } = 1;

    /// <summary>Ground area of a vine [m²].</summary>
    public double GroundAreaPerVine => Spacing * VineSpacing;
}
