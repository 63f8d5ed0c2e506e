using CanopySim.Files.Charts;
using CanopySim.Files.Fonts;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>The two sizes of text.</summary>
public enum TextKind
{
    /// <summary>Everything.</summary>
    Plain,

    /// <summary>The same, strong: the chosen one of several.</summary>
    Strong,

    /// <summary>The sentence that a bar or panel opens with.</summary>
    Heading,
}

/// <summary>
/// Measures and draws text in the embedded fonts. What was cut into stretches of one typeface is kept: a screen says
/// the same again and again.
/// </summary>
public static class ScreenText
{
    private const int MostKept = 4000;

    private static readonly Dictionary<(string, bool), List<(string Text, SKTypeface Face)>> Runs = [];
    private static readonly Dictionary<(SKTypeface, float), SKFont> Fonts = [];
    private static readonly Dictionary<(string, bool, float), float> Widths = [];
    private static readonly Lock Lock = new();

    /// <summary>Size of a kind at a scale [px].</summary>
    public static float Size(TextKind kind, float scale) =>
        scale * (kind == TextKind.Heading ? ChartStyle.TitleSize : ChartStyle.TextSize);

    /// <summary>From line to line [px].</summary>
    public static float LineHeight(TextKind kind, float scale) => MathF.Round(1.36f * Size(kind, scale));

    /// <summary>Height of the ink over the baseline and under it [px].</summary>
    public static (float Above, float Below) Extent(TextKind kind, float scale) =>
        (0.76f * Size(kind, scale), 0.22f * Size(kind, scale));

    public static float Width(string text, TextKind kind, float scale)
    {
        var (strong, size) = (kind != TextKind.Plain, Size(kind, scale));
        lock (Lock)
        {
            if (Widths.TryGetValue((text, strong, size), out var known)) return known;
            if (Widths.Count > MostKept) Widths.Clear();
            return Widths[(text, strong, size)] = RunsOf(text, strong).Sum(run =>
                FontOf(run.Face, size).MeasureText(run.Text));
        }
    }

    /// <summary>Lines no wider than the width, broken between words; a word that is wider alone is cut.</summary>
    public static IReadOnlyList<string> Wrap(string text, TextKind kind, float scale, float width)
    {
        List<string> lines = [];
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer, kind, scale) > width)
            {
                lines.Add(Fit(line, kind, scale, width));
                longer = word;
            }

            line = longer;
        }

        lines.Add(Fit(line, kind, scale, width));
        return lines;
    }

    /// <summary>The text, or as much of its beginning as fits, with an ellipsis.</summary>
    public static string Fit(string text, TextKind kind, float scale, float width)
    {
        if (Width(text, kind, scale) <= width) return text;
        var length = text.Length;
        while (length > 0 && Width(text[..length].TrimEnd() + "…", kind, scale) > width) length--;
        return length > 0 ? text[..length].TrimEnd() + "…" : "";
    }

    public static void Draw(SKCanvas canvas, string text, float x, float baseline, TextKind kind, float scale,
        SKPaint paint)
    {
        var size = Size(kind, scale);
        lock (Lock)
        {
            foreach (var (run, face) in RunsOf(text, kind != TextKind.Plain))
            {
                var font = FontOf(face, size);
                canvas.DrawText(run, x, baseline, SKTextAlign.Left, font, paint);
                x += font.MeasureText(run);
            }
        }
    }

    private static List<(string Text, SKTypeface Face)> RunsOf(string text, bool strong)
    {
        if (Runs.TryGetValue((text, strong), out var known)) return known;
        if (Runs.Count > MostKept) Runs.Clear();
        return Runs[(text, strong)] = [.. EmbeddedFonts.Runs(text, strong)];
    }

    private static SKFont FontOf(SKTypeface face, float size)
    {
        if (Fonts.TryGetValue((face, size), out var known)) return known;
        return Fonts[(face, size)] =
            new SKFont(face, size) { Subpixel = true, Hinting = SKFontHinting.None, Edging = SKFontEdging.Antialias };
    }
}
