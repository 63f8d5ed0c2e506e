using CanopySim.Files.Fonts;
using SkiaSharp;

namespace CanopySim.Files.Charts;

/// <summary>Text on a canvas, each character in a font that has it.</summary>
public static class ChartText
{
    /// <summary>Draws from the left end of the baseline.</summary>
    public static void Draw(
        SKCanvas canvas, string text, float x, float baseline, float size, uint rgb, bool strong = false)
    {
        using var paint = new SKPaint { Color = new SKColor(0xFF000000 | rgb), IsAntialias = true };
        foreach (var (run, typeface) in EmbeddedFonts.Runs(text, strong))
        {
            using var font = FontOf(typeface, size);
            canvas.DrawText(run, x, baseline, SKTextAlign.Left, font, paint);
            x += font.MeasureText(run);
        }
    }

    /// <summary>Width of the text as it would be drawn [px].</summary>
    public static float Width(string text, float size, bool strong = false)
    {
        var width = 0f;
        foreach (var (run, typeface) in EmbeddedFonts.Runs(text, strong))
        {
            using var font = FontOf(typeface, size);
            width += font.MeasureText(run);
        }

        return width;
    }

    /// <summary>The text in lines no wider than the width [px], broken between words.</summary>
    public static IReadOnlyList<string> Wrap(string text, float size, float width, bool strong = false)
    {
        List<string> lines = [];
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer, size, strong) > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        lines.Add(line);
        return lines;
    }

    // Unhinted and between whole pixels: widths that do not depend on the scale, so that PNG and SVG agree.
    private static SKFont FontOf(SKTypeface typeface, float size) =>
        new(typeface, size) { Subpixel = true, Hinting = SKFontHinting.None, Edging = SKFontEdging.Antialias };
}
