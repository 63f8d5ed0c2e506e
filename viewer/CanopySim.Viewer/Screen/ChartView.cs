using CanopySim.Files.Charts;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// A chart of the runner in its place, with the line of the day in sight and the line under the pointer.
/// </summary>
public sealed class ChartView : Widget
{
    public required SKImage Image { get; init; }

    /// <summary>Where its panels lie, in the chart's own units.</summary>
    public required IReadOnlyList<ChartField> Fields { get; init; }

    /// <summary>Pixels of the chart's own units.</summary>
    public required float Scale { get; init; }

    /// <summary>
    /// Place on the axis along the bottom of what is in sight; null where the axis is of another kind.
    /// </summary>
    public double? Now { get; init; }

    /// <summary>Goes to a place on that axis; null where it is no date or hour.</summary>
    public Action<double>? Go { get; init; }

    /// <summary>The value on the axis along the bottom under a place; null outside the panels.</summary>
    public double? ValueAt(float x, float y)
    {
        if (!Contains(x, y)) return null;
        foreach (var field in Fields)
        {
            var local = (x - Bounds.Left) / Scale;
            if (local < field.Left || local > field.Right) continue;
            return field.ValueAt(local);
        }

        return null;
    }

    /// <summary>Place of a value [px of the window].</summary>
    public float PixelOf(double value) => Bounds.Left + (Fields[0].PixelOf(value) * Scale);

    public override void Draw(Pen pen, WidgetLook look)
    {
        pen.Canvas.DrawImage(Image, Bounds, new SKSamplingOptions(SKFilterMode.Linear));
        if (Now is { } now) DrawLine(pen, now, pen.U(1.6f));
        if (look.Pointer is { } pointer && ValueAt(pointer.X, pointer.Y) is { } under) DrawLine(pen, under, pen.U(1));
    }

    public override void Press(float x, float y) => Drag(x, y);

    public override void Drag(float x, float y)
    {
        if (Go is { } go && ValueAt(x, Math.Clamp(y, Bounds.Top, Bounds.Bottom - 1)) is { } value) go(value);
    }

    private void DrawLine(Pen pen, double value, float width)
    {
        foreach (var field in Fields)
        {
            if (value < field.FromX || value > field.ToX) continue;
            var x = Bounds.Left + (field.PixelOf(value) * Scale);
            pen.Line(x, Bounds.Top + (field.Top * Scale), x, Bounds.Top + (field.Bottom * Scale), pen.Palette.Accent,
                width);
        }
    }
}
