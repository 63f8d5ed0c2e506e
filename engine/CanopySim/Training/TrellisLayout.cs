using CanopySim.Numerics;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>What a trellis holds: its walls of foliage.</summary>
public static class TrellisLayout
{
    /// <summary>The walls of a row, in the order of their numbers.</summary>
    /// <param name="trellis">The trellis.</param>
    /// <param name="row">Number of the row in the cell: roofs that face each other are led right and left in
    /// turn.</param>
    public static IReadOnlyList<FoliageWall> WallsOf(Trellis trellis, int row = 0)
    {
        var (cordon, width) = (trellis.CordonHeightOrDefault, trellis.FoliageWidthOrDefault);
        var tilt = UnitConversion.RadiansFromDegrees(trellis.WallTiltOrDefault);
        var half = 0.5 * trellis.CordonDistanceOrDefault;
        return trellis.Form switch
        {
            TrellisForm.UprightHedge => [Led(0, 0, 0)],
            TrellisForm.HangingCurtain => [new FoliageWall(0, 0, cordon, Math.PI, width)],
            TrellisForm.Overhead => [Roof()],
            TrellisForm.HighWire => [new FoliageWall(0, 0, cordon, Math.PI, width) { IsHeld = false }],
            TrellisForm.TwinCurtain =>
                [new FoliageWall(0, -half, cordon, Math.PI, width), new FoliageWall(1, half, cordon, Math.PI, width)],
            TrellisForm.OpenU or TrellisForm.SlantedV => [Led(0, -half, -tilt), Led(1, half, tilt)],
            TrellisForm.UpAndDown =>
                [Led(0, 0, 0), new FoliageWall(1, 0, trellis.LowerCordonHeightOrDefault, Math.PI, width)],
            TrellisForm.Bush => [new FoliageWall(0, 0, cordon, 0, width) { IsHeld = false }],
            _ => throw new ArgumentOutOfRangeException(nameof(trellis), trellis.Form, "a form without walls"),
        };

        FoliageWall Led(int index, double across, double lean) => new(index, across, cordon, lean, width)
        {
            TopHeight = trellis.TopWireHeightOrDefault,
            CatchWires = trellis.CatchWires,
        };

        FoliageWall Roof()
        {
            var side = SideOf(trellis.RoofArms, row);
            return new FoliageWall(0, 0, cordon, side < 0 ? -0.5 * Math.PI : 0.5 * Math.PI, width)
            {
                TopHeight = trellis.TopWireHeightOrDefault,
                OnlySide = side,
            };
        }
    }

    /// <summary>The rows of the cell, each with its walls.</summary>
    public static IReadOnlyList<RowOfWalls> RowsOf(Scenario scenario) =>
        [.. Enumerable.Range(0, scenario.Rows.RowsInCell).Select(row =>
            new RowOfWalls(row, scenario.Rows.AcrossOf(row), WallsOf(scenario.Trellis, row)))];

    /// <summary>The wall that a shoot belongs to.</summary>
    public static FoliageWall WallOf(Scenario scenario, Shoot shoot) =>
        WallsOf(scenario.Trellis, scenario.Rows.RowOf(shoot.Vine))[shoot.Wall];

    /// <summary>Meters of canopy in a meter of row: 2 where the canopy is divided, else 1.</summary>
    public static int CanopyMetersPerRowMeter(Trellis trellis) => WallsOf(trellis).Count;

    /// <summary>
    /// Meters of cordon of a vine: one cordon a wall; those of up-and-down may be one; a bush has its arms instead [m].
    /// </summary>
    public static double CordonMetersPerVine(Scenario scenario) => scenario.Trellis.Form == TrellisForm.Bush
        ? BushHead.ArmCount * BushHead.ArmLength
        : scenario.Rows.VineSpacing * CordonsOf(scenario.Trellis).Count;

    /// <summary>Where cordons run, across and over the ground [m]: none twice; the head of a bush.</summary>
    public static IReadOnlyList<(double Across, double Height)> CordonsOf(Trellis trellis) =>
        [.. WallsOf(trellis).Select(wall => (wall.CordonAcross, wall.CordonHeight)).Distinct()];

    /// <summary>
    /// How far a row's cordons and wires leave foliage to go, left and right of its middle [m]; none where nothing
    /// holds it.
    /// </summary>
    public static (double Left, double Right) SpanOf(Trellis trellis, int row = 0)
    {
        var (left, right) = (0.0, 0.0);
        foreach (var wall in WallsOf(trellis, row).Where(wall => wall.IsHeld))
        {
            foreach (var (middle, half) in Widths(wall))
                (left, right) = (Math.Min(left, middle - half), Math.Max(right, middle + half));
        }

        return (left, right);
    }

    // Middle and half width across the row at each height where that may be widest.
    private static IEnumerable<(double Middle, double Half)> Widths(FoliageWall wall)
    {
        if (wall.IsFlat && wall.OnlySide != 0) return [(0.5 * wall.OnlySide * wall.Width, 0.5 * wall.Width)];
        if (wall.IsFlat || wall.Hangs) return [(wall.CordonAcross, 0.5 * wall.Width)];
        double[] heights = [wall.CordonHeight, wall.TopHeight, .. wall.CatchWires.Select(pair => pair.Height)];
        return heights.Select(height => (wall.MiddleAt(height), 0.5 * wall.WidthAt(height) / Math.Cos(wall.Tilt)));
    }

    private static int SideOf(RoofArms arms, int row) => arms switch
    {
        RoofArms.Right => 1,
        RoofArms.Left => -1,
        RoofArms.Facing => row % 2 == 0 ? 1 : -1,
        _ => 0,
    };
}
