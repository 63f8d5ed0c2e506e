using CanopySim.Drawing.Leaves;
using CanopySim.Files.Charts;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>What the colors of the leaves mean: name and unit, the colors, the numbers under them.</summary>
public sealed class LegendBar : Widget
{
    private const float RampHeight = 10;

    public required LeafColoring Coloring { get; init; }

    public required Units Units { get; init; }

    public required float Scale { get; init; }

    public required bool IsFitted { get; init; }

    /// <summary>What the colors show in this hour besides; empty for nothing.</summary>
    public string Note { get; init; } = "";

    public override bool TakesPointer => Tip.Length > 0;

    /// <summary>Height in pixels at a width: name and unit may take two lines.</summary>
    public static float HeightAt(
        LeafColoring coloring, Units units, bool isFitted, string note, float width, float scale) =>
        (TitleLines(coloring, units, isFitted, note, width, scale).Count * ScreenText.LineHeight(TextKind.Plain, scale))
        + (RampHeight * scale) + ScreenText.LineHeight(TextKind.Plain, scale) + (2 * scale);

    /// <summary>The numbers that stand under the colors, as shares of the ramp with their text.</summary>
    public static IReadOnlyList<(double Share, string Text)> Numbers(LeafColoring coloring, Units units)
    {
        if (coloring.Quantity == LeafQuantity.Shoot) return [];
        const int Steps = 4;
        return [.. Enumerable.Range(0, Steps + 1).Select(step =>
        {
            var share = step / (double)Steps;
            return (share, NumberAt(coloring, coloring.From + (share * (coloring.To - coloring.From)), units));
        })];
    }

    public override void Draw(Pen pen, WidgetLook look)
    {
        var line = ScreenText.LineHeight(TextKind.Plain, Scale);
        var y = Bounds.Top;
        var titles = TitleLines(Coloring, Units, IsFitted, Note, Bounds.Width, Scale);
        for (var i = 0; i < titles.Count; i++)
        {
            pen.TextIn(
                titles[i], new SKRect(Bounds.Left, y, Bounds.Right, y + line), TextKind.Plain, pen.Palette.Text,
                    pen.Palette.Surface);
            y += line;
        }

        var ramp = new SKRect(Bounds.Left, y, Bounds.Right, y + pen.U(RampHeight));
        DrawRamp(pen, ramp);
        var numbers = new SKRect(Bounds.Left, ramp.Bottom + pen.U(1), Bounds.Right, ramp.Bottom + pen.U(1) + line);
        if (Coloring.Quantity == LeafQuantity.Shoot)
        {
            pen.TextIn(
                ScreenText.Fit("one color a shoot, seven in turn", TextKind.Plain, Scale, numbers.Width), numbers,
                    TextKind.Plain, pen.Palette.Quiet, pen.Palette.Surface);
            return;
        }

        var free = float.MinValue;
        foreach (var (share, text) in Numbers(Coloring, Units))
        {
            var width = ScreenText.Width(text, TextKind.Plain, Scale);
            var left = Math.Clamp(ramp.Left + ((float)share * ramp.Width) - (width / 2), ramp.Left,
                Math.Max(ramp.Left, ramp.Right - width));
            if (left < free) continue;
            pen.TextIn(
                text, new SKRect(left, numbers.Top, left + width + 1, numbers.Bottom), TextKind.Plain,
                    pen.Palette.Quiet, pen.Palette.Surface);
            free = left + width + pen.U(8);
        }
    }

    private static IReadOnlyList<string> TitleLines(
        LeafColoring coloring, Units units, bool isFitted, string note, float width, float scale)
    {
        var unit = QuantityText.Unit(coloring.Quantity, units);
        var text = QuantityText.Name(coloring.Quantity) + (unit.Length > 0 ? $", {unit}" : "")
            + (isFitted ? ", fitted to these leaves" : "") + (note.Length > 0 ? $"; {note}" : "");
        return ScreenText.Wrap(text, TextKind.Plain, scale, width);
    }

    // A narrow fitted range needs more digits than the quantity mostly has.
    private static string NumberAt(LeafColoring coloring, double value, Units units)
    {
        var text = QuantityText.Number(coloring.Quantity, value, units);
        return coloring.Quantity == LeafQuantity.Age && value >= coloring.To
            && coloring.To >= LeafColoring.Fixed(LeafQuantity.Age).To
            ? text + "+" : text;
    }

    private void DrawRamp(Pen pen, SKRect ramp)
    {
        var table = Coloring.Table();
        if (Coloring.Quantity == LeafQuantity.Shoot)
        {
            for (var i = 0; i < 7; i++)
            {
                var color = table[(int)Math.Round(ShootColors.ShareOf(i) * 255)];
                pen.Fill(new SKRect(ramp.Left + (i * ramp.Width / 7), ramp.Top, ramp.Left + ((i + 1) * ramp.Width / 7),
                    ramp.Bottom), color);
            }

            return;
        }

        using var shader = SKShader.CreateLinearGradient(
            new SKPoint(ramp.Left, 0), new SKPoint(ramp.Right, 0), [.. table.Where((_, i) => i % 5 == 0).Select(rgb =>
                new SKColor(0xFF000000 | rgb))], SKShaderTileMode.Clamp);
        using var paint = new SKPaint { Shader = shader };
        pen.Canvas.DrawRect(ramp, paint);
    }
}
