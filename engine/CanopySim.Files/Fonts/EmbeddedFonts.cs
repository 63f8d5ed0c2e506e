using System.Text;
using ScottPlot;
using SkiaSharp;

namespace CanopySim.Files.Fonts;

/// <summary>
/// The fonts that charts and viewer draw with: Inter (SIL Open Font License), and DejaVu Sans for the characters that
/// Inter lacks. They travel inside the assembly because the Skia build without dependencies sees no fonts of the
/// system:
/// text in any other font vanishes without a word.
/// </summary>
public static class EmbeddedFonts
{
    public const string Family = "Inter";

    public const string FallbackFamily = "DejaVu Sans";

    private static readonly Lazy<bool> Registration = new(AddResolver);

    public static SKTypeface Regular { get; } = Load("Inter-Regular.ttf");

    public static SKTypeface SemiBold { get; } = Load("Inter-SemiBold.ttf");

    public static SKTypeface Fallback { get; } = Load("DejaVuSans.ttf");

    /// <summary>Makes ScottPlot draw with these fonts; any number of calls do it once.</summary>
    public static void Register() => _ = Registration.Value;

    /// <summary>
    /// The text cut into stretches that one typeface can draw; what neither has stays with Inter, as its empty box.
    /// </summary>
    public static IEnumerable<(string Text, SKTypeface Typeface)> Runs(string text, bool strong)
    {
        var main = strong ? SemiBold : Regular;
        var run = new StringBuilder();
        var current = main;
        foreach (var rune in text.EnumerateRunes())
        {
            var typeface = Has(main, rune) || !Has(Fallback, rune) ? main : Fallback;
            if (typeface != current && run.Length > 0)
            {
                yield return (run.ToString(), current);
                run.Clear();
            }

            current = typeface;
            run.Append(rune.ToString());
        }

        if (run.Length > 0) yield return (run.ToString(), current);
    }

    /// <summary>Whether the typeface has the character.</summary>
    public static bool Has(SKTypeface typeface, Rune character)
    {
        using var font = new SKFont(typeface);
        return font.ContainsGlyph(character.Value);
    }

    private static SKTypeface Load(string file)
    {
        using var stream = typeof(EmbeddedFonts).Assembly.GetManifestResourceStream($"CanopySim.Files.Fonts.{file}")
            ?? throw new InvalidOperationException($"The font {file} is missing from the assembly.");
        return SKTypeface.FromStream(stream)
            ?? throw new InvalidOperationException($"The font {file} could not be read.");
    }

    private static bool AddResolver()
    {
        // First in the list: the resolver of system fonts answers every name, with a typeface that draws nothing.
        ScottPlot.Fonts.FontResolvers.Insert(0, new Resolver());
        ScottPlot.Fonts.Default = Family;
        return true;
    }

    private sealed class Resolver : IFontResolver
    {
        public SKTypeface CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
            Find(fontName, weight >= FontWeight.SemiBold);

        public SKTypeface CreateTypeface(string fontName, bool bold, bool italic) => Find(fontName, bold);

        private static SKTypeface Find(string fontName, bool bold) =>
            fontName == FallbackFamily ? Fallback : bold ? SemiBold : Regular;
    }
}
