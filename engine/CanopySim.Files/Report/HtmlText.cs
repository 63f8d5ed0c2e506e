using System.Text;

namespace CanopySim.Files.Report;

/// <summary>HTML as it is written: every text that goes in is escaped, so that no name can become markup.</summary>
internal sealed class HtmlText
{
    private readonly StringBuilder _html = new();

    public static string Escape(string text) => text
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal)
        .Replace("\"", "&quot;", StringComparison.Ordinal)
        .Replace("'", "&#39;", StringComparison.Ordinal);

    /// <summary>
    /// The text as a CSS string: all but letters and digits by their code, so that it ends neither string nor style.
    /// </summary>
    public static string CssString(string text)
    {
        var css = new StringBuilder("\"");
        foreach (var rune in text.EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune)) css.Append(rune.ToString());
            else css.Append('\\').Append(rune.Value.ToString("X6", null));
        }

        return css.Append('"').ToString();
    }

    /// <summary>Markup of our own, with nothing of the user's in it.</summary>
    public HtmlText Markup(string html)
    {
        _html.Append(html).Append('\n');
        return this;
    }

    public HtmlText Element(string tag, string text, string? cssClass = null)
    {
        _html.Append('<').Append(tag);
        if (cssClass is not null) _html.Append(" class=\"").Append(cssClass).Append('"');
        _html.Append('>').Append(Escape(Unbroken(text))).Append("</").Append(tag).Append(">\n");
        return this;
    }

    public HtmlText List(IEnumerable<string> items)
    {
        Markup("<ul>");
        foreach (var item in items) Element("li", item);
        return Markup("</ul>");
    }

    /// <summary>
    /// A table that scrolls inside itself where the page is narrow; the first cell of a row is its name. What a cell
    /// has after
    /// a line break stands below, quieter.
    /// </summary>
    public HtmlText Table(
        string name, IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows, string cssClass)
    {
        _html.Append("<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"").Append(Escape(name))
            .Append("\">\n");
        _html.Append("<table class=\"").Append(cssClass).Append("\">\n<thead><tr>");
        foreach (var head in heads) _html.Append("<th scope=\"col\">").Append(Escape(head)).Append("</th>");
        _html.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in rows)
        {
            _html.Append("<tr><th scope=\"row\">").Append(Cell(row[0])).Append("</th>");
            foreach (var cell in row.Skip(1)) _html.Append("<td>").Append(Cell(cell)).Append("</td>");
            _html.Append("</tr>\n");
        }

        _html.Append("</tbody>\n</table>\n</div>\n");
        return this;
    }

    /// <summary>A table, or where it has no rows a sentence that says why.</summary>
    public HtmlText TableOr(
        string whenEmpty, string name, IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows,
        string cssClass)
    {
        var all = rows.ToList();
        return all.Count == 0 ? Element("p", whenEmpty) : Table(name, heads, all, cssClass);
    }

    private static string Cell(string text) => text.Split('\n', 2) is [var first, var below]
        ? $"{Escape(first)}<br><span>{Escape(below)}</span>"
        : Escape(text);

    /// <summary>A number must not lose its sign of unit to the next line.</summary>
    private static string Unbroken(string text) => text
        .Replace(" %", "\u00A0%", StringComparison.Ordinal)
        .Replace(" °", "\u00A0°", StringComparison.Ordinal);

    public override string ToString() => _html.ToString();
}
