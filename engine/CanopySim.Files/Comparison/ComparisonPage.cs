using CanopySim.Files.Charts;
using CanopySim.Files.Report;

namespace CanopySim.Files.Comparison;

/// <summary>
/// The report of a comparison: one HTML file like the season's. A first page for the grower, then why, option beside
/// option; last what it rests on.
/// </summary>
public static class ComparisonPage
{
    /// <summary>The sections in their order: whether one begins a page where it is printed, and what it adds.</summary>
    private static readonly IReadOnlyList<(bool BeginsPage, Action<HtmlText, ComparisonReport> Add)> Sections =
    [
        (true, Answer), (true, Scenarios), (false, ComparisonWork.Section), (true, Canopies), (false, Light),
        (false, ComparisonAssessment.FruitHeat), (false, Canopy), (false, Carbon), (false, Ripening), (false, Sugar),
        (true, ComparisonAssessment.CanopySheet), (false, ComparisonAssessment.NextYear),
        (true, ComparisonBasis.Section), (false, Cautions),
    ];

    public static string Html(ComparisonReport report)
    {
        var html = new HtmlText();
        var first = report.Options[0];
        var others = report.Options.Count == 2 ? report.Options[1].Name : $"{report.Options.Count - 1} others";
        var title = $"{first.Name} and {others} compared";
        var foot = title + (report.Printed is { } day ? $", report of {SeasonSentences.Date(day)}" : "");
        PageParts.Head(html, title, foot);
        foreach (var (beginsPage, add) in Sections)
        {
            html.Markup(beginsPage ? "<section>" : "<section class=\"follows\">");
            add(html, report);
            html.Markup("</section>");
        }

        return PageParts.End(html, foot);
    }

    private static void Answer(HtmlText html, ComparisonReport report)
    {
        var (options, first) = (report.Options, report.Options[0]);
        html.Element("h1", ComparisonSentences.Opening(options))
            .Element("p", $"Beside {first.Name}, the option named first:", "lead")
            .List(options.Skip(1).Select(option => ScenarioDifferences.InWords(option, first, report.Units)))
            .Element("p", "Simulated seasons: what the model says, not what was measured. "
                + Weather(options), "quiet");
        ComparisonWork.NotAsPlanned(html, options);
        Picture(html, report, ComparisonCharts.Sugar);
        html.Element("h2", "What it costs in fruit and leaves")
            .List(options.Skip(1).Select(option => ComparisonSentences.Cost(option, first, report.Units)))
            .Table("What a grower compares", report.Tables.Heads, report.Tables.Figures(), "numbers beside");
    }

    private static void Scenarios(HtmlText html, ComparisonReport report)
    {
        var options = report.Options;
        html.Element("h2", "What differs in the scenarios");
        var differences = ScenarioDifferences.Of([.. options.Select(option => option.Document)], report.Units);
        if (differences.Count == 0)
        {
            html.Element("p", "Nothing but their names: the same values went in.");
            return;
        }

        html.Table(
            "What differs in the scenarios", ["What", .. options.Select(option => option.Name)],
            differences.Select(difference => (IReadOnlyList<string>)
            [
                ScenarioDifferences.Short(difference.Key), .. difference.Values,
            ]),
            "says");
    }

    private static void Canopies(HtmlText html, ComparisonReport report)
    {
        if (report.Views.All(views => views.Count == 0)) return;
        PerspectiveParts.Write(html, [.. report.Options.Select(option => option.Name)], report.Perspectives);
        html.Element("h2", "The canopies, drawn to one scale");
        PageParts.Key(html);
        foreach (var (option, views) in report.Options.Zip(report.Views)) PageParts.Views(html, views, option.Name);
    }

    private static void Light(HtmlText html, ComparisonReport report)
    {
        html.Element("h2", "Light on the leaves and on the fruit");
        Pair(html, report, ComparisonCharts.Light, ComparisonCharts.FruitLight);
        ComparisonAssessment.FruitLight(html, report);
    }

    private static void Canopy(HtmlText html, ComparisonReport report)
    {
        html.Element("h2", "Canopy at veraison");
        Picture(html, report, ComparisonCharts.LeafArea);
        html.TableOr(
            "No option reached veraison, so there is no canopy to describe at it.", "Canopy at veraison",
            report.Tables.Heads, report.Tables.Canopy(), "numbers");
    }

    private static void Carbon(HtmlText html, ComparisonReport report)
    {
        html.Element("h2", "Which leaves fed the fruit");
        Picture(html, report, ComparisonCharts.FruitCarbon);
        var shares = report.Tables.FeedingLeaves().ToList();
        html.TableOr(
            "No fruit ripened, so no leaves fed any.", "Carbon of the ripening weeks by age of leaf",
            ["Age of leaf", .. report.Options.Select(option => option.Name)], shares, "numbers");
    }

    private static void Ripening(HtmlText html, ComparisonReport report)
    {
        html.Element("h2", "Carbon gained and ripening capacity");
        Pair(html, report, ComparisonCharts.NetGain, ComparisonCharts.RipeningCapacity);
        html.Element("h2", "The season of one vine")
            .Table("The season of one vine", report.Tables.Heads, report.Tables.Totals(), "numbers");
    }

    private static void Sugar(HtmlText html, ComparisonReport report) => html
        .Element("h2", "Sugar and harvest")
        .Element("p", "The course of the sugar is drawn on the first page.", "quiet")
        .TableOr("No option had fruit to harvest.", "Harvest", report.Tables.Heads, report.Tables.Harvest(), "numbers")
        .Element("h2", "Stages")
        .Table(
            "Stages", ["Stage", .. report.Options.Select(option => option.Name)], report.Tables.Stages(), "dates");

    private static void Cautions(HtmlText html, ComparisonReport report) => PageParts.Cautions(
        html, "Shoots and leaves differ by chance: before you trust a small difference, "
            + "see whether it stays with another seed (--seed 2).");

    private static string Weather(IReadOnlyList<ComparedOption> options) => ScenarioDifferences.HaveOneWeather(options)
        ? "All options had the same weather."
        : "The options had different weather or years: part of what differs is the weather. "
            + "Days are counted as if all were in the year of the first.";

    private static ChartPicture? PictureOf(ComparisonReport report, string stem) =>
        report.Charts.FirstOrDefault(chart => chart.Stem == stem);

    // Side by side on paper, below each other on a screen.
    private static void Pair(HtmlText html, ComparisonReport report, string first, string second)
    {
        html.Markup("<div class=\"pair\">");
        foreach (var stem in (string[])[first, second])
        {
            if (PictureOf(report, stem) is { } chart) PageParts.Figure(html, chart);
        }

        html.Markup("</div>");
    }

    private static void Picture(HtmlText html, ComparisonReport report, string stem)
    {
        if (PictureOf(report, stem) is { } chart) PageParts.Figure(html, chart, isAside: true);
    }
}
