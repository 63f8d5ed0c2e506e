using CanopySim.Files.Charts;
using CanopySim.Growth;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// The efficiency of a leaf by its age as points to drag. With the focus, Page up and Page down choose a point and the
/// arrow keys move it: up and
/// down by 5 %, left and right by a day.
/// </summary>
public sealed class CurveEditor : Widget
{
    private const double MostDays = 190;

    private const double EfficiencyStep = 0.05;

    private const int ColorStops = 40;

    public required IReadOnlyList<LeafAgePoint> Points { get; init; }

    /// <summary>The curve as the scenario has it.</summary>
    public required IReadOnlyList<LeafAgePoint> Before { get; init; }

    public required int Chosen { get; init; }

    public required float Scale { get; init; }

    public required Action<int> Choose { get; init; }

    public required Action<int, double, double> Move { get; init; }

    public override bool CanFocus => true;

    private SKRect Field => new(
        Bounds.Left + (34 * Scale), Bounds.Top + (10 * Scale), Bounds.Right - (12 * Scale),
            Bounds.Bottom - (22 * Scale));

    private double LastDay => Math.Max(MostDays, Points[^1].Age);

    public SKPoint PixelOf(LeafAgePoint point) => new(
        (float)(Field.Left + (point.Age / LastDay * Field.Width)),
            (float)(Field.Bottom - (point.Efficiency * Field.Height)));

    public override void Draw(Pen pen, WidgetLook look)
    {
        var (field, palette) = (Field, pen.Palette);
        foreach (var percent in (int[])[0, 50, 100])
        {
            var y = field.Bottom - (percent / 100f * field.Height);
            pen.Line(field.Left, y, field.Right, y, palette.Seam, pen.U(1));
            var text = Measure.Number(percent, 0);
            var width = ScreenText.Width(text, TextKind.Plain, Scale);
            pen.TextIn(text, new SKRect(field.Left - pen.U(6) - width, y - pen.U(9), field.Left - pen.U(5), y
                + pen.U(9)), TextKind.Plain, palette.Quiet, palette.Surface);
        }

        for (var day = 0; day <= LastDay; day += 30)
        {
            var text = Measure.Number(day, 0);
            var width = ScreenText.Width(text, TextKind.Plain, Scale);
            var x = field.Left + (float)(day / LastDay * field.Width);
            pen.TextIn(text, new SKRect(x - (width / 2), field.Bottom + pen.U(4), x + (width / 2) + 1, Bounds.Bottom),
                TextKind.Plain, palette.Quiet, palette.Surface);
        }

        DrawAges(pen);
        if (!Points.SequenceEqual(Before)) DrawCurve(pen, Before, palette.Line, pen.U(1));
        DrawCurve(pen, Points, palette.Text, pen.U(2));
        for (var i = 0; i < Points.Count; i++)
        {
            var at = PixelOf(Points[i]);
            pen.Disc(at.X, at.Y, pen.U(i == Chosen ? 6.5f : 4.5f), palette.Accent);
            if (i == Chosen) pen.Disc(at.X, at.Y, pen.U(3), palette.Surface);
        }

        DrawFocus(pen, Bounds, look);
    }

    public override void Press(float x, float y)
    {
        var nearest = 0;
        for (var i = 1; i < Points.Count; i++)
            if (DistanceTo(i, x, y) < DistanceTo(nearest, x, y)) nearest = i;
        Choose(nearest);
    }

    public override void Drag(float x, float y) => Move(
        Chosen, (x - Field.Left) / Field.Width * LastDay, (Field.Bottom - y) / Field.Height);

    public override bool Take(KeyDown key)
    {
        if (key.Modifiers != KeyModifiers.None) return false;
        var point = Points[Chosen];
        switch (key.Key)
        {
            case ScreenKey.PageUp:
                Choose((Chosen + 1) % Points.Count);
                return true;
            case ScreenKey.PageDown:
                Choose((Chosen + Points.Count - 1) % Points.Count);
                return true;
            case ScreenKey.Up:
                Move(Chosen, point.Age, point.Efficiency + EfficiencyStep);
                return true;
            case ScreenKey.Down:
                Move(Chosen, point.Age, point.Efficiency - EfficiencyStep);
                return true;
            case ScreenKey.Left:
                Move(Chosen, point.Age - 1, point.Efficiency);
                return true;
            case ScreenKey.Right:
                Move(Chosen, point.Age + 1, point.Efficiency);
                return true;
            default:
                return false;
        }
    }

    private float DistanceTo(int point, float x, float y) =>
        SKPoint.Distance(PixelOf(Points[point]), new SKPoint(x, y));

    private void DrawAges(Pen pen)
    {
        var curve = new LeafAgeCurve { Points = Points };
        using var builder = new SKPathBuilder();
        builder.MoveTo(Field.Left, Field.Bottom);
        builder.LineTo(Field.Left, Field.Bottom - (float)(curve.At(0) * Field.Height));
        foreach (var at in Points.Select(PixelOf)) builder.LineTo(at.X, at.Y);
        builder.LineTo(Field.Right, Field.Bottom - (float)(curve.At(LastDay) * Field.Height));
        builder.LineTo(Field.Right, Field.Bottom);
        builder.Close();
        using var under = builder.Detach();
        var colors = Enumerable.Range(0, ColorStops)
            .Select(stop => new SKColor(0xFF000000 | ChartStyle.AgeColor(stop * LastDay / (ColorStops - 1)))).ToArray();
        using var shader = SKShader.CreateLinearGradient(
            new SKPoint(Field.Left, 0), new SKPoint(Field.Right, 0), colors, SKShaderTileMode.Clamp);
        using var paint = new SKPaint { Shader = shader, IsAntialias = true };
        pen.Canvas.DrawPath(under, paint);
    }

    private void DrawCurve(Pen pen, IReadOnlyList<LeafAgePoint> points, uint rgb, float width)
    {
        for (var i = 1; i < points.Count; i++)
        {
            var (from, to) = (PixelOf(points[i - 1]), PixelOf(points[i]));
            pen.Line(from.X, from.Y, to.X, to.Y, rgb, width);
        }
    }
}
