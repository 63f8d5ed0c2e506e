using CanopySim.Files.Charts;
using CanopySim.Files.Report;

namespace CanopySim.Files.Comparison;

/// <summary>
/// Work in the canopies of a comparison: what was done in which, and what could not be done as planned.
/// </summary>
internal static class ComparisonWork
{
    /// <summary>Warnings of all options, each with whose it is.</summary>
    public static IEnumerable<string> Warnings(IReadOnlyList<ComparedOption> options) =>
        options.SelectMany(option => option.Summary.Warnings.Select(warning => $"{option.Name}: {warning}"));

    /// <summary>What to heed where work was done, each once.</summary>
    public static IEnumerable<string> Cautions(IReadOnlyList<ComparedOption> options) =>
        options.SelectMany(option => option.Summary.Cautions).Distinct();

    public static void Section(HtmlText html, ComparisonReport report)
    {
        var options = report.Options;
        html.Element("h2", "Work in the canopy");
        if (options.All(option => option.Season.Work.Count == 0)) html.Element("p", "Nothing was done in any.");
        else
        {
            html.Table(
                    "Work in the canopy",
                    ["Option", "Day", "What was done", "Shoots", "Clusters", "Leaves", "Leaf area a vine",
                        "Fruit a vine"],
                    options.SelectMany(option => Rows(option, report.Units)), "work")
                .Element(
                    "p", "Shoots, clusters and leaves are those of all vines that were simulated; leaf area and fruit "
                        + "are what went, or what a spray reached.", "quiet");
        }

        NotAsPlanned(html, options);
        var cautions = Cautions(options).ToList();
        if (cautions.Count > 0) html.Element("h3", "Heed").List(cautions);
    }

    /// <summary>The warnings, under their heading; nothing where all went as planned.</summary>
    public static void NotAsPlanned(HtmlText html, IReadOnlyList<ComparedOption> options)
    {
        var warnings = Warnings(options).ToList();
        if (warnings.Count > 0) html.Element("h3", "Not as planned").List(warnings);
    }

    /// <summary>Each work of an option in a line of words.</summary>
    public static IEnumerable<string> Lines(ComparedOption option, Units units)
    {
        foreach (var work in option.Season.Work)
        {
            List<string> gone = [];
            if (work.LeafAreaM2PerVine > 0) gone.Add(
                $"{Measure.LeafArea.Text(units, work.LeafAreaM2PerVine, 2)} of leaf");
            if (work.FruitGPerVine > 0) gone.Add($"{Measure.SmallMass.Text(units, work.FruitGPerVine, 0)} of fruit");
            var what = gone.Count == 0 ? "" : $"; {string.Join(" and ", gone)} a vine";
            yield return $"{SeasonSentences.Date(work.Date)}, {work.What}{what}";
        }
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(ComparedOption option, Units units)
    {
        var rows = new SeasonTables(option.Season, option.Scenario, units).Work().ToList();
        if (rows.Count == 0) yield return [option.Name, "–", "nothing", "–", "–", "–", "–", "–"];
        foreach (var row in rows) yield return [option.Name, .. row];
    }
}
