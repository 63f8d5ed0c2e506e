using System.Globalization;
using System.Xml.Linq;
using CanopySim.Files.Fonts;
using SkiaSharp;

namespace CanopySim.Files.Charts;

/// <summary>
/// What Skia writes as SVG, made fit for any reader. Skia places every character by itself, which tears words apart
/// where
/// the reader has not got the font: here a text has its start and its length, and the reader's font is fitted into
/// that.
/// </summary>
internal static class SvgDocument
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static string Render(ChartSize size, string title, string caption, Action<SKCanvas> draw)
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(SKRect.Create(size.Width, size.Height), stream))
        {
            draw(canvas);
        }

        stream.Position = 0;
        var document = XDocument.Load(stream);
        var root = document.Root!;
        root.SetAttributeValue(
            "viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {size.Width} {size.Height}"));
        root.SetAttributeValue("role", "img");
        root.AddFirst(new XElement(Svg + "title", title), new XElement(Svg + "desc", caption));
        foreach (var text in root.Descendants(Svg + "text")) SetAsOneWord(text);
        RenumberNames(root);
        return document.ToString(SaveOptions.DisableFormatting);
    }

    /// <summary>
    /// Skia counts its names on through the whole process: counted from one, the same chart is the same text.
    /// </summary>
    private static void RenumberNames(XElement root)
    {
        var named = root.Descendants().Where(e => e.Attribute("id") is not null).ToList();
        var names = named.Select((e, i) =>
            (Old: e.Attribute("id")!.Value, New: FormattableString.Invariant($"n{i + 1}"))).ToList();
        var references = names.ToDictionary(n => $"url(#{n.Old})", n => $"url(#{n.New})");
        foreach (var (element, name) in named.Zip(names)) element.SetAttributeValue("id", name.New);
        foreach (var attribute in root.Descendants().Attributes())
        {
            if (references.TryGetValue(attribute.Value, out var reference)) attribute.Value = reference;
        }
    }

    private static void SetAsOneWord(XElement text)
    {
        var isStrong = text.Attribute("font-weight") is { Value: not ("400" or "normal") };
        var isFallback = text.Attribute("font-family")?.Value.Contains(EmbeddedFonts.FallbackFamily) == true;
        var size = (float)text.Attribute("font-size")!;
        foreach (var name in (string[])["x", "y"])
        {
            if (text.Attribute(name) is { } places) places.Value = places.Value.Split(',', ' ')[0];
        }

        // Skia breaks lines inside the element; its own spaces belong to the words.
        text.Value = text.Value.Trim('\n', '\t');
        text.SetAttributeValue(XNamespace.Xml + "space", "preserve");
        if (isStrong) text.SetAttributeValue("font-weight", "600");
        using var font = new SKFont(
            isFallback ? EmbeddedFonts.Fallback : isStrong ? EmbeddedFonts.SemiBold : EmbeddedFonts.Regular, size)
        {
            Subpixel = true,
            Hinting = SKFontHinting.None,
        };
        if (text.Value.Length > 1)
        {
            text.SetAttributeValue("textLength", Math.Round(font.MeasureText(text.Value), 2));
            text.SetAttributeValue("lengthAdjust", "spacingAndGlyphs");
        }

        text.SetAttributeValue("font-family", "Inter, 'DejaVu Sans', system-ui, sans-serif");
    }
}
