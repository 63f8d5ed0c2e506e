using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// Pixels over the periodic cell for light that comes from one direction. Points are projected along the direction onto the
/// ground, where the lattice of the cell turns periodicity into an index that wraps. Heights are taken above the slope,
/// z' = z − riseAcross x − riseAlong y, so that lattice vectors are horizontal and height grows along every line upwards.
/// </summary>
internal readonly struct ProjectedGrid
{
    // A sun lower than this casts the shadow of one at this height: about 0.06° over the slope. Below it shadows are longer than
    // 1,000 heights and the number of cells that a triangle wraps would have no bound.
    private const double LowestVertical = 1e-3;

    private const double ProductTolerance = 1e-4;
    private const double AspectFreedom = 1.3;

    private ProjectedGrid(double shiftAcross, double shiftAlong, int width, int height, in Cell cell, double vertical)
    {
        (ShiftAcross, ShiftAlong, Width, Height) = (shiftAcross, shiftAlong, width, height);
        (ColumnsPerMeter, RowsPerMeter) = (width / cell.Across, height / cell.Along);
        (Vertical, PixelPower) = (vertical, vertical * cell.GroundArea / ((double)width * height));
    }

    /// <summary>Ground that a point moves per metre of its height, across [m m⁻¹].</summary>
    public double ShiftAcross { get; }

    public double ShiftAlong { get; }

    public int Width { get; }

    public int Height { get; }

    public double ColumnsPerMeter { get; }

    public double RowsPerMeter { get; }

    /// <summary>
    /// Scalar product of the direction with the slope's (−riseAcross, −riseAlong, 1): normal irradiance times this is irradiance
    /// through the cell.
    /// </summary>
    public double Vertical { get; }

    /// <summary>Area of a pixel, square to the direction: power of one pixel per normal irradiance [m²].</summary>
    public double PixelPower { get; }

    public int PixelCount => checked(Width * Height);

    /// <summary>The direction's rise over the slope plane; light comes from the hillside when it is not positive.</summary>
    public static double VerticalOf(in Cell cell, Vector3 direction) =>
        direction.Z - (cell.RiseAcross * direction.X) - (cell.RiseAlong * direction.Y);

    /// <summary>
    /// A grid whose pixels are <paramref name="pixel"/>² square to the direction. All directions must share that area, because
    /// links are counted and not weighted: so width and height bend a little until their product meets it to 1e-4, or as near as
    /// whole numbers come when a low direction has few pixels. Pixels stretch along the direction's azimuth.
    /// </summary>
    public static ProjectedGrid For(in Cell cell, Vector3 direction, double pixel)
    {
        var vertical = VerticalOf(cell, direction);
        if (!(vertical > 0)) throw new ArgumentOutOfRangeException(nameof(direction), direction, "the direction must rise over the slope");
        var bounded = Math.Max(vertical, LowestVertical);
        var squares = (double)(direction.X * direction.X) + (direction.Y * direction.Y);
        var acrossShare = squares > 0 ? direction.X * direction.X / squares : 0.5;
        var target = Math.Max(1, cell.GroundArea * bounded / (pixel * pixel));
        var ideal = Math.Clamp(cell.Across / pixel * Math.Pow(bounded, acrossShare), 1, target);
        var (width, height) = Factor(target, ideal);
        return new ProjectedGrid(direction.X / bounded, direction.Y / bounded, width, height, cell, vertical);
    }

    /// <summary>A grid of so many pixels under light from straight above.</summary>
    public static ProjectedGrid Overhead(in Cell cell, int width, int height) => new(0, 0, width, height, cell, 1);

    private static (int Width, int Height) Factor(double target, double ideal)
    {
        var (best, bestError) = (Math.Max(1, (int)Math.Round(ideal)), double.MaxValue);
        for (var step = 0; step <= (ideal * (AspectFreedom - 1)) + 1; step++)
        {
            foreach (var width in (ReadOnlySpan<int>)[(int)Math.Round(ideal) + step, (int)Math.Round(ideal) - step])
            {
                if (width < 1) continue;
                var error = Math.Abs((width * Math.Max(1, Math.Round(target / width)) / target) - 1);
                if (error < bestError) (best, bestError) = (width, error);
            }

            if (bestError <= ProductTolerance) break;
        }

        return (best, (int)Math.Max(1, Math.Round(target / best)));
    }
}
