using System.Numerics;
using CanopySim.Geometry;
using CanopySim.Light;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Light;

public class ProjectedGridTests
{
    private static readonly Gen<(Cell Cell, Vector3 Direction)> Any =
        Gen.Select(Gen.Double[0.3, 6], Gen.Double[0.3, 6], Gen.Double[-0.4, 0.4].Array[2], Gen.Double[0, 89.5], Gen.Double[0, 360])
            .Select((across, along, rise, zenith, azimuth) => (new Cell(across, along, rise[0], rise[1]), SkyRings.Direction(zenith, azimuth)))
            .Where(any => OddScenes.Rise(any.Item2, any.Item1) > 0.002);

    /// <summary>
    /// Links are counted, not weighted: pixels of all directions must have one area, to 1e-4 where there are enough of them. Of p
    /// pixels a width of w columns makes the nearest whole number of rows within w / (2 p) of the area, evenly; as widths of 0.7 to
    /// 1.3 w are tried, all 0.6 w of them miss it by more than 20 / p with a chance of e⁻²⁴.
    /// </summary>
    [Fact]
    public void Pixels_square_to_the_direction_have_the_area_asked_for() =>
        Gen.Select(Any, Gen.Double[0.004, 0.03]).Sample((any, pixel) =>
        {
            var grid = ProjectedGrid.For(any.Cell, any.Direction, pixel);
            var pixels = any.Cell.GroundArea * OddScenes.Rise(any.Direction, any.Cell) / (pixel * pixel);
            Assert.Equal(any.Cell.GroundArea * grid.Vertical, grid.PixelPower * grid.PixelCount, 1e-9 * any.Cell.GroundArea);

            Assert.Equal(1, grid.PixelPower / (pixel * pixel), 1e-4 + (20 / pixels));
            Assert.Equal(grid.Width, grid.ColumnsPerMeter * any.Cell.Across, 1e-9 * grid.Width);
            Assert.Equal(grid.Height, grid.RowsPerMeter * any.Cell.Along, 1e-9 * grid.Height);
        }, iter: 3000);

    /// <summary>A point and the foot of the line through it have the same place on the grid.</summary>
    [Fact]
    public void Points_move_along_the_direction_to_their_foot() =>
        Any.Sample(any =>
        {
            var (cell, direction) = any;
            var grid = ProjectedGrid.For(cell, direction, 0.01);
            var up = 0.7 / OddScenes.Rise(direction, cell);

            // From the ground at (0, 0): the height over the slope is 0.7 m.
            Assert.Equal(0, (up * direction.X) - (0.7 * grid.ShiftAcross), 1e-9 * up);
            Assert.Equal(0, (up * direction.Y) - (0.7 * grid.ShiftAlong), 1e-9 * up);
        }, iter: 1000);

    [Fact]
    public void The_lowest_suns_cast_bounded_shadows_and_bring_their_own_power()
    {
        var sun = SkyRings.Direction(90 - 0.01, 20);
        var grid = ProjectedGrid.For(new Cell(1, 1), sun, 0.01);
        Assert.InRange(Math.Sqrt((grid.ShiftAcross * grid.ShiftAcross) + (grid.ShiftAlong * grid.ShiftAlong)), 900, 1001);
        Assert.Equal(sun.Z, grid.PixelPower * grid.PixelCount, 1e-12);
    }

    [Fact]
    public void What_does_not_rise_over_the_slope_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ProjectedGrid.For(new Cell(1, 1), new Vector3(1, 0, 0), 0.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProjectedGrid.For(new Cell(1, 1, 0.5), SkyRings.Direction(70, 0), 0.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProjectedGrid.For(new Cell(1, 1), new Vector3(0, 0, float.NaN), 0.01));
    }
}
