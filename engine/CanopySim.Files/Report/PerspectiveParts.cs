using CanopySim.Files.Charts;

namespace CanopySim.Files.Report;

/// <summary>
/// Canopies in perspective on a page. The legend within a picture is left off where the picture is shown small; the
/// page's own key says the same in text.
/// </summary>
internal static class PerspectiveParts
{
    /// <summary>The canopy of a season, or a sentence on why it is not drawn.</summary>
    public static void Write(HtmlText html, CanopyPerspective perspective)
    {
        if (perspective.Picture is { } picture) Figure(html, picture, name: null);
        else Missing(html, perspective);
    }

    /// <summary>Those of a comparison side by side, each under the name of its option.</summary>
    /// <param name="html">The page.</param>
    /// <param name="names">Names of the options.</param>
    /// <param name="perspectives">One an option; nothing is written where there are none.</param>
    public static void Write(
        HtmlText html, IReadOnlyList<string> names, IReadOnlyList<CanopyPerspective> perspectives)
    {
        var has = perspectives.Any(one => one.Picture is not null);
        if (!has && perspectives.All(one => one.Missing is null)) return;
        html.Element("h2", "The canopies as one stands before them");
        if (!has)
        {
            Missing(html, perspectives.First(one => one.Missing is not null));
            return;
        }

        html.Element("p", "All are seen from the same place in the alley, at the same hour.");
        PageParts.AgeKey(html);
        html.Markup("<div class=\"scenes\">");
        foreach (var (name, one) in names.Zip(perspectives))
        {
            if (one.Picture is { } picture) Figure(html, picture, name);
        }

        html.Markup("</div>");
    }

    private static void Figure(HtmlText html, ChartPicture picture, string? name)
    {
        html.Markup("<figure class=\"scene\">");
        if (name is not null) html.Element("h3", name);
        html.Markup(PageParts.Image("only", picture)).Element("figcaption", picture.Caption).Markup("</figure>");
    }

    private static void Missing(HtmlText html, CanopyPerspective perspective)
    {
        if (perspective.Missing is { } why)
            html.Element("p", $"There is no picture of the canopy in perspective here. {why}", "quiet");
    }
}
