using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>A stretch of text that was drawn: where its ink is, the box it must stay in, and whose it is.</summary>
public readonly record struct DrawnText(string Owner, string Text, SKRect Ink, SKRect Box, uint Rgb, uint On);

/// <summary>Draws in the screen's colors and notes every text.</summary>
public sealed class Pen(SKCanvas canvas, ScreenPalette palette, float scale)
{
    private readonly List<DrawnText> _texts = [];
    private readonly SKPaint _fill = new() { IsAntialias = true };
    private readonly SKPaint _stroke = new() { IsAntialias = true, IsStroke = true };

    public SKCanvas Canvas => canvas;

    public ScreenPalette Palette => palette;

    public float Scale => scale;

    /// <summary>Whose text is being drawn.</summary>
    public string Owner { get; set; } = "";

    public IReadOnlyList<DrawnText> Texts => _texts;

    /// <summary>A length of the design in pixels.</summary>
    public float U(float units) => units * scale;

    public void Fill(SKRect rect, uint rgb, float radius = 0, byte alpha = 255)
    {
        _fill.Color = Color(rgb, alpha);
        if (radius > 0) canvas.DrawRoundRect(rect, radius, radius, _fill);
        else canvas.DrawRect(rect, _fill);
    }

    public void Fill(SKPath path, uint rgb, byte alpha = 255)
    {
        _fill.Color = Color(rgb, alpha);
        canvas.DrawPath(path, _fill);
    }

    public void Stroke(SKRect rect, uint rgb, float width, float radius = 0)
    {
        (_stroke.Color, _stroke.StrokeWidth) = (Color(rgb, 255), width);
        canvas.DrawRoundRect(rect, radius, radius, _stroke);
    }

    public void Stroke(SKPath path, uint rgb, float width)
    {
        (_stroke.Color, _stroke.StrokeWidth) = (Color(rgb, 255), width);
        canvas.DrawPath(path, _stroke);
    }

    public void Line(float x0, float y0, float x1, float y1, uint rgb, float width)
    {
        (_stroke.Color, _stroke.StrokeWidth) = (Color(rgb, 255), width);
        canvas.DrawLine(x0, y0, x1, y1, _stroke);
    }

    public void Disc(float x, float y, float radius, uint rgb)
    {
        _fill.Color = Color(rgb, 255);
        canvas.DrawCircle(x, y, radius, _fill);
    }

    /// <summary>
    /// Text from the left end of its baseline; on is the color under it, and it is meant to stay in the box.
    /// </summary>
    public void Text(string text, float x, float baseline, TextKind kind, uint rgb, uint on, SKRect box)
    {
        if (text.Length == 0) return;
        _fill.Color = Color(rgb, 255);
        ScreenText.Draw(canvas, text, x, baseline, kind, scale, _fill);
        var (above, below) = ScreenText.Extent(kind, scale);
        var ink = new SKRect(x, baseline - above, x + ScreenText.Width(text, kind, scale), baseline + below);
        _texts.Add(new DrawnText(Owner, text, ink, box, rgb, on));
    }

    /// <summary>Text in the middle of a box's height, at its left with an indent, or centered.</summary>
    public void TextIn(string text, SKRect box, TextKind kind, uint rgb, uint on, float indent = 0,
        bool isCentered = false)
    {
        var (above, below) = ScreenText.Extent(kind, scale);
        var x = isCentered ? box.MidX - (ScreenText.Width(text, kind, scale) / 2) : box.Left + indent;
        Text(text, x, box.MidY + ((above - below) / 2), kind, rgb, on, box);
    }

    private static SKColor Color(uint rgb, byte alpha) => new SKColor(0xFF000000 | rgb).WithAlpha(alpha);
}
