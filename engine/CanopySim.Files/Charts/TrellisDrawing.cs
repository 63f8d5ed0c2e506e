using CanopySim.Training;
using CanopySim.Views;
using SkiaSharp;

namespace CanopySim.Files.Charts;

/// <summary>
/// Wires, posts and arms of a trellis in a view of a canopy, square and to scale like it. From the side one post is
/// drawn, near the right edge: how far posts stand apart no scenario says.
/// </summary>
/// <param name="trellis">What stands in the row.</param>
/// <param name="rowSpacing">From row to row [m]; its neighbors stand in views along the row and from above.</param>
/// <param name="side">From where it is looked at.</param>
/// <param name="frame">Width and height of the picture [m].</param>
/// <param name="middle">How far the row's middle, or the ground, lies below the upper edge [m].</param>
/// <param name="pixels">Width and height of the picture [px].</param>
internal sealed class TrellisDrawing(
    Trellis trellis, double rowSpacing, ViewSide side, double frame, double middle, int pixels)
{
    /// <summary>Color of wires and posts.</summary>
    public const uint Color = 0x22261F;

    private const float WireWidth = 1.5f;
    private const float PostWidth = 5;
    private const float WireEnd = 3;

    // Paper beside a line keeps it seen on dark leaves.
    private const float Halo = 2;
    private const byte HaloAlpha = 120;

    private const double FromRightEdge = 0.12;
    private const int Neighbors = 2;

    private IEnumerable<double> Rows =>
        Enumerable.Range(-Neighbors, (2 * Neighbors) + 1).Select(row => row * rowSpacing);

    /// <summary>What stands in the canopy or under it.</summary>
    public void DrawBehind(SKCanvas canvas)
    {
        if (side == ViewSide.Along) return;
        Bars(canvas);
        if (side == ViewSide.Above) Wires(canvas);
    }

    /// <summary>
    /// What stands before the canopy: the nearer wires of each pair, or the end of the row with all of them.
    /// </summary>
    public void DrawBefore(SKCanvas canvas)
    {
        if (side == ViewSide.Above) return;
        if (side == ViewSide.Along) Bars(canvas);
        Wires(canvas);
    }

    private void Wires(SKCanvas canvas)
    {
        foreach (var wire in TrellisParts.WiresOf(trellis))
        {
            switch (side)
            {
                case ViewSide.Front:
                    Line(canvas, 0, wire.Height, frame, wire.Height, WireWidth);
                    break;
                case ViewSide.Above:
                    foreach (var row in Rows) Line(canvas, 0, -row - wire.Across, frame, -row - wire.Across, WireWidth);
                    break;
                default:
                    foreach (var row in Rows) Dot(canvas, row + wire.Across, wire.Height);
                    break;
            }
        }
    }

    private void Bars(SKCanvas canvas)
    {
        var post = frame - FromRightEdge;
        foreach (var bar in TrellisParts.BarsOf(trellis))
        {
            switch (side)
            {
                case ViewSide.Front:
                    Line(canvas, post, bar.FromHeight, post, bar.ToHeight, PostWidth);
                    break;
                case ViewSide.Above:
                    foreach (var row in Rows)
                        Line(canvas, post, -row - bar.FromAcross, post, -row - bar.ToAcross, PostWidth);
                    break;
                default:
                    foreach (var row in Rows)
                        Line(canvas, row + bar.FromAcross, bar.FromHeight, row + bar.ToAcross, bar.ToHeight,
                            0.5f * PostWidth);
                    break;
            }
        }
    }

    private void Line(SKCanvas canvas, double fromRight, double fromUp, double toRight, double toUp, float width)
    {
        var (from, to) = (At(fromRight, fromUp), At(toRight, toUp));
        using var halo = Paint(ChartStyle.Paper, HaloAlpha, width + Halo);
        using var line = Paint(Color, 255, width);
        canvas.DrawLine(from, to, halo);
        canvas.DrawLine(from, to, line);
    }

    private void Dot(SKCanvas canvas, double right, double up)
    {
        using var halo = Paint(ChartStyle.Paper, HaloAlpha, 0);
        using var dot = Paint(Color, 255, 0);
        canvas.DrawCircle(At(right, up), WireEnd + (0.5f * Halo), halo);
        canvas.DrawCircle(At(right, up), WireEnd, dot);
    }

    private SKPoint At(double right, double up)
    {
        var left = side == ViewSide.Along ? -0.5 * frame : 0;
        return new SKPoint((float)((right - left) / frame * pixels), (float)((middle - up) / frame * pixels));
    }

    private static SKPaint Paint(uint rgb, byte alpha, float width) => new()
    {
        Color = new SKColor(0xFF000000 | rgb).WithAlpha(alpha),
        StrokeWidth = width,
        IsAntialias = true,
    };
}
