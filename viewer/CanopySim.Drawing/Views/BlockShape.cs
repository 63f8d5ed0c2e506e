using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Training;

namespace CanopySim.Drawing.Views;

/// <summary>What a view must know of a block: how it repeats, how high it stands and where north is.</summary>
/// <param name="Cell">The cell that repeats.</param>
/// <param name="RowSpacing">Distance between rows [m].</param>
/// <param name="Top">Height of the trellis over the ground [m].</param>
/// <param name="Azimuth">Direction of the rows, clockwise from north [rad].</param>
/// <param name="HasRoof">Whether foliage spreads over the alleys, so that one stands under it.</param>
public sealed record BlockShape(Cell Cell, float RowSpacing, float Top, float Azimuth, bool HasRoof = false)
{
    private const float LeastTop = 1.2f;

    // Posts stand about so far apart [m]. Common practice, no source.
    private const double PostSpacing = 6;

    public static BlockShape Of(Scenario scenario)
    {
        var wires = TrellisParts.WiresOf(scenario.Trellis);
        var top = Math.Max(scenario.Trellis.CordonHeightOrDefault, wires.Count > 0 ? wires.Max(wire => wire.Height)
            : 0);
        return new BlockShape(
            CanopyScene.CellOf(scenario), (float)scenario.Rows.Spacing, Math.Max(LeastTop, (float)top),
            (float)(scenario.Rows.Azimuth * Math.PI / 180), scenario.Trellis.Form == TrellisForm.Overhead);
    }

    /// <summary>
    /// A shape whose views suit every block: as high as the highest, and with the narrowest alley, so that an eye in it
    /// stands in no other's foliage. The ground is the first's.
    /// </summary>
    public static BlockShape Around(IReadOnlyList<BlockShape> blocks) => blocks[0] with
    {
        Top = blocks.Max(block => block.Top),
        RowSpacing = blocks.Min(block => block.RowSpacing),
        HasRoof = blocks.Any(block => block.HasRoof),
    };

    /// <summary>Every so manieth cell along the row has a post.</summary>
    public int CellsPerPost => Math.Max(1, (int)Math.Round(PostSpacing / Cell.Along));

    /// <summary>Unit vector of a compass direction over level ground, clockwise from north [rad].</summary>
    public Vector3 Towards(float azimuth)
    {
        var (sin, cos) = MathF.SinCos(azimuth - Azimuth);
        return new Vector3(sin, cos, 0);
    }

    /// <summary>Height of the ground [m].</summary>
    public float GroundAt(float x, float y) => (float)((Cell.RiseAcross * x) + (Cell.RiseAlong * y));

    /// <summary>How far a copy of the cell is moved [m].</summary>
    public Vector3 Offset(int across, int along)
    {
        var (x, y) = ((float)(across * Cell.Across), (float)(along * Cell.Along));
        return new Vector3(x, y, GroundAt(x, y));
    }
}
