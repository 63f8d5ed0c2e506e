using System.Text;
using CanopySim.Files.Charts;

namespace CanopySim.Files.Report;

/// <summary>
/// What every page has: one HTML file that opens anywhere, without network or script, with its style, its pictures and
/// its cautions.
/// </summary>
internal static class PageParts
{
    /// <summary>What stands over the table of checks.</summary>
    public const string HowChecksRead =
        "The model keeps books of light and carbon; what they do not account for tells how well they close.";

    /// <summary>Opens the page up to its first section.</summary>
    public static void Head(HtmlText html, string title, string foot)
    {
        using var stream = typeof(PageParts).Assembly.GetManifestResourceStream("CanopySim.Files.Report.report.css")
            ?? throw new InvalidOperationException("The report's style is missing from the assembly.");
        var style = new StreamReader(stream, Encoding.UTF8).ReadToEnd();
        html.Markup("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">")
            .Markup("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")

            // Says to the browser what the page promises its reader: nothing is fetched, nothing runs.
            .Markup("<meta http-equiv=\"Content-Security-Policy\" "
                + "content=\"default-src 'none'; img-src data:; style-src 'unsafe-inline'\">")
            .Element("title", title)
            .Markup($"<style>\n{style}\n@page {{ @bottom-left {{ content: {HtmlText.CssString(foot)}; }} }}\n</style>")
            .Markup("</head>\n<body>\n<main>");
    }

    public static string End(HtmlText html, string foot) =>
        html.Element("footer", foot).Markup("</main>\n</body>\n</html>").ToString();

    /// <summary>A chart; where the page is narrow, drawn for that.</summary>
    /// <param name="html">The page.</param>
    /// <param name="picture">The chart.</param>
    /// <param name="isAside">True where it stands beside its table when printed.</param>
    public static void Figure(HtmlText html, ChartPicture picture, bool isAside = false)
    {
        // Two pictures of which one is shown: a browser that prints does not choose among sources anew.
        html.Markup(isAside ? "<figure class=\"aside\">" : "<figure>");
        var hasNarrow = picture.NarrowSvg.Length > 0;
        html.Markup(Image(Data(picture), hasNarrow ? "wide" : "only", picture));
        if (hasNarrow) html.Markup(Image(SvgData(picture.NarrowSvg), "narrow", picture));
        html.Element("figcaption", picture.Caption).Markup("</figure>");
    }

    /// <summary>
    /// Pictures of a canopy side by side, or scrolling where the page is narrow; <see cref="Key"/> tells their colors.
    /// </summary>
    /// <param name="html">The page.</param>
    /// <param name="views">What <see cref="CanopyPictures"/> made; nothing is written where there are none.</param>
    /// <param name="name">Whose canopy, where the page has several.</param>
    public static void Views(HtmlText html, IReadOnlyList<ChartPicture> views, string? name = null)
    {
        if (views.Count == 0) return;
        html.Markup("<figure>");
        if (name is not null) html.Element("h3", name);
        var label = HtmlText.Escape($"Views of {name ?? "the canopy"}");
        html.Markup($"<div class=\"views\" role=\"region\" tabindex=\"0\" aria-label=\"{label}\">");
        foreach (var view in views)
        {
            html.Markup($"<div><img src=\"{Data(view)}\" alt=\"{Alternative(view)}\">")
                .Element("span", view.Title, "quiet").Markup("</div>");
        }

        html.Markup("</div>").Element("figcaption", views[0].Caption).Markup("</figure>");
    }

    /// <summary>The colors of views.</summary>
    public static void Key(HtmlText html)
    {
        BeginKey(html);
        Swatch(html, CanopyPictures.Cluster, "clusters");
        Swatch(html, CanopyPictures.Wood, "wood");
        Swatch(html, TrellisDrawing.Color, "wires and posts");
        html.Markup("</p>");
    }

    /// <summary>The colors of leaf ages alone.</summary>
    public static void AgeKey(HtmlText html)
    {
        BeginKey(html);
        html.Markup("</p>");
    }

    /// <summary>A picture that is drawn in one size.</summary>
    public static string Image(string cssClass, ChartPicture picture) => Image(Data(picture), cssClass, picture);

    public static void Cautions(HtmlText html, params string[] further) => html
        .Element("h2", "Before you act on this")
        .List(
        [
            "A model result is advice to check in the row, not an instruction.",
            .. further,
            "Where sprays are concerned, sulfur in heat among them: follow the product label and "
                + "local rules, keep re-entry and pre-harvest intervals, and wear the protection named on the label.",
            "Heat, blades and machines hurt people and vines: follow local rules for work in heat and "
                + "with machines, by hand or driven.",
            "Leave licensed work to licensed people.",
        ]);

    private static void BeginKey(HtmlText html)
    {
        html.Markup("<p class=\"key quiet\"><span>Leaf age, days:</span>");
        foreach (var ages in ChartStyle.AgeClasses) Swatch(html, ages.Rgb, ages.Label);
    }

    private static void Swatch(HtmlText html, uint rgb, string label) =>
        html.Markup($"<span><i style=\"background:{ChartStyle.HexOf(rgb)}\"></i>{HtmlText.Escape(label)}</span>");

    private static string Image(string data, string cssClass, ChartPicture picture) =>
        $"<img class=\"{cssClass}\" src=\"{data}\" alt=\"{Alternative(picture)}\">";

    private static string Alternative(ChartPicture picture) => HtmlText.Escape($"{picture.Title}. {picture.Caption}");

    private static string Data(ChartPicture picture) =>
        picture.Svg.Length > 0 ? SvgData(picture.Svg) : $"data:image/png;base64,{Convert.ToBase64String(picture.Png)}";

    private static string SvgData(string svg) =>
        $"data:image/svg+xml;base64,{Convert.ToBase64String(Encoding.UTF8.GetBytes(svg))}";
}
