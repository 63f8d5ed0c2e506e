using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Parameters;

namespace CanopySim.Files.Comparison;

/// <summary>What a comparison rests on: the weather, what the model assumes, its checks.</summary>
internal static class ComparisonBasis
{
    public static void Section(HtmlText html, ComparisonReport report)
    {
        html.Element("h2", "Weather that was estimated");
        foreach (var options in report.Options.GroupBy(Estimated))
        {
            var whose = options.Count() == report.Options.Count
                ? "All options"
                : string.Join(", ", options.Select(option => option.Name));
            html.Element("p", $"{whose}: {options.Key}.");
        }

        Assumptions(html, report.Options, report.Units);
        html.Element("h2", "Checks")
            .Element("p", PageParts.HowChecksRead)
            .Table("Checks", report.Tables.Heads, report.Tables.Checks(), "numbers");
    }

    // On paper only what a reader should doubt, small; who wants every source has the page on a screen.
    private static void Assumptions(HtmlText html, IReadOnlyList<ComparedOption> options, Units units)
    {
        var values = AssumedValues.Of(options, units).ToList();
        html.Element("h2", "What the model assumes")
            .Element("p", "Values with how sure each is; where the options differ, each says its own.")
            .Markup("<div class=\"onscreen\">")
            .Table(
                "Values that the model used", ["Key", "Value", "How sure", "Source"],
                values.Select(value => value.Row), "values")
            .Markup("</div>")
            .Markup("<div class=\"onpaper\">")
            .Element(
                "p", $"Printed here are those that differ, are assumed or are from memory; all {values.Count} with "
                    + "their sources stand in the file of this page, and canopysim check prints them.", "quiet")
            .Markup("<ul class=\"brief\">");
        foreach (var value in values.Where(value => value.Differs || value.Mark is Mark.Assumed or Mark.Recalled))
            html.Element("li", $"{value.Row[0]} {value.Row[1]} ({value.Row[2]})");
        html.Markup("</ul>").Markup("</div>");
    }

    private static string Estimated(ComparedOption option)
    {
        var (estimated, gaps) = (option.Summary.EstimatedInputs, option.Summary.FilledGaps);
        return $"{(estimated.Count > 0 ? string.Join(", ", estimated) : "nothing")}; gaps filled: {gaps}";
    }
}
