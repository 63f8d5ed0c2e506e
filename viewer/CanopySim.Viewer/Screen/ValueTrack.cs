using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// A value on a line from its least to its most, in steps: dragged, or moved by the arrow keys when it has the focus.
/// </summary>
public sealed class ValueTrack : Widget
{
    public required double Least { get; init; }

    public required double Most { get; init; }

    public required double Step { get; init; }

    public required double Value { get; init; }

    /// <summary>What the value was before it was changed, marked on the line.</summary>
    public double? Mark { get; init; }

    public required Action<double> Set { get; init; }

    public override bool CanFocus => true;

    public override void Draw(Pen pen, WidgetLook look)
    {
        var (left, right, y) = (LeftEnd(pen.Scale), RightEnd(pen.Scale), Bounds.MidY);
        pen.Fill(new SKRect(left, y - pen.U(2), right, y + pen.U(2)), pen.Palette.Pressed, pen.U(2));
        var x = left + ((float)Share(Value) * (right - left));
        pen.Fill(new SKRect(left, y - pen.U(2), x, y + pen.U(2)), pen.Palette.Accent, pen.U(2));
        if (Mark is { } mark)
        {
            var at = left + ((float)Share(mark) * (right - left));
            pen.Line(at, y - pen.U(8), at, y + pen.U(8), pen.Palette.Line, pen.U(1));
        }

        pen.Disc(x, y, pen.U(look.IsHovered || look.IsHeld ? 8 : 7), pen.Palette.Accent);
        pen.Disc(x, y, pen.U(3), pen.Palette.Surface);
        DrawFocus(pen, Bounds, look);
    }

    public override void Press(float x, float y) => Drag(x, y);

    public override void Drag(float x, float y)
    {
        var scale = Bounds.Height / Height;
        var share = (x - LeftEnd(scale)) / (RightEnd(scale) - LeftEnd(scale));
        SetRounded(Least + (Math.Clamp(share, 0, 1) * (Most - Least)));
    }

    public override bool Take(KeyDown key)
    {
        if (key.Modifiers != KeyModifiers.None) return false;
        var to = key.Key switch
        {
            ScreenKey.Left or ScreenKey.Down => Value - Step,
            ScreenKey.Right or ScreenKey.Up => Value + Step,
            ScreenKey.PageDown => Value - (5 * Step),
            ScreenKey.PageUp => Value + (5 * Step),
            ScreenKey.Home => Least,
            ScreenKey.End => Most,
            _ => double.NaN,
        };
        if (double.IsNaN(to)) return false;
        SetRounded(to);
        return true;
    }

    /// <summary>Height of the widget in the design's units.</summary>
    public const float Height = 22;

    private const float Inset = 8;

    private double Share(double value) => Math.Clamp((value - Least) / (Most - Least), 0, 1);

    private float LeftEnd(float scale) => Bounds.Left + (Inset * scale);

    private float RightEnd(float scale) => Bounds.Right - (Inset * scale);

    private void SetRounded(double value)
    {
        var steps = Math.Round((Math.Clamp(value, Least, Most) - Least) / Step);
        Set(Math.Min(Most, Math.Round(Least + (steps * Step), 6)));
    }
}
