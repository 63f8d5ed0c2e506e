using CanopySim.Files.Charts;
using CanopySim.Files.Report;

namespace CanopySim.Files.Forecast;

/// <summary>
/// The page of a forecast: one HTML file like a season's report. It opens with the day of ripeness and its range, shows why,
/// then what the notes told, how the vine stands, and last what all of it rests on.
/// </summary>
public static class ForecastPage
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "forecast.html";

    /// <summary>The sections in their order: whether one begins a page where it is printed, and what it adds.</summary>
    private static readonly IReadOnlyList<(bool BeginsPage, Action<HtmlText, ForecastReport, ChartShelf> Add)> Sections =
    [
        (true, Answer), (false, Stages), (true, Growth), (false, Leaves), (false, Options), (true, Notes),
        (true, StandingSections.Tips), (true, StandingSections.Sprays), (true, StandingSections.Mildew), (true, Basis), (false, Cautions),
    ];

    /// <summary>The page.</summary>
    /// <param name="report">What it is made of.</param>
    /// <param name="charts">What <see cref="ForecastCharts"/> drew.</param>
    public static string Html(ForecastReport report, IReadOnlyList<ChartPicture> charts)
    {
        var html = new HtmlText();
        var name = report.Vine.Season.Summary.Scenario;
        var title = $"{name}, forecast of {SeasonSentences.Date(report.AsOf)}";
        var foot = title + (report.Printed is { } day ? $", made on {SeasonSentences.Date(day)}" : "");
        PageParts.Head(html, title, foot);
        var shelf = new ChartShelf(charts);
        foreach (var (beginsPage, add) in Sections)
        {
            var section = new HtmlText();
            add(section, report, shelf);
            if (section.ToString().Length == 0) continue;
            html.Markup(beginsPage ? "<section>" : "<section class=\"follows\">").Markup(section.ToString()).Markup("</section>");
        }

        return PageParts.End(html, foot);
    }

    private static void Answer(HtmlText html, ForecastReport report, ChartShelf charts)
    {
        html.Element("h1", ForecastSentences.Opening(report)).Element("p", ForecastSentences.Standing(report), "lead");
        if (ForecastSentences.Feeding(report) is { } feeding) html.Element("p", feeding, "lead");
        html.Element(
            "p",
            $"{report.Vine.Season.Summary.Scenario}, {report.Vine.Scenario.Cultivar.Name}. {report.Members} simulated vines that agree "
                + $"with the notes, each in a weather of its own: what the model says, not what was measured. {report.Outlook}", "quiet");
        charts.Figure(html, ForecastCharts.Sugar);
    }

    private static void Stages(HtmlText html, ForecastReport report, ChartShelf charts)
    {
        html.Element("h2", "When")
            .Table(
                "Stages", ["Stage", "Half of the seasons by", "Four of five seasons", "Reached by"],
                [.. ((StageOutlook[])[report.Bloom, report.Veraison, report.Target]).Select(ForecastSentences.Row)], "dates");
        charts.Figure(html, ForecastCharts.Chance, isAside: true);
    }

    private static void Growth(HtmlText html, ForecastReport report, ChartShelf charts)
    {
        html.Element("h2", "Shoots and leaves").Markup("<div class=\"pair\">");
        charts.Figure(html, ForecastCharts.ShootLength);
        charts.Figure(html, ForecastCharts.LeafArea);
        html.Markup("</div>");
    }

    private static void Leaves(HtmlText html, ForecastReport report, ChartShelf charts)
    {
        html.Element("h2", "Leaves that will feed the fruit")
            .Element("p", "Shares of the carbon that the leaves gain from veraison to the target sugar, nights included. Sugar is made "
                + "of this carbon.");
        charts.Figure(html, ForecastCharts.FeedingLeaves);
        html.TableOr(
            "No fruit ripens in these seasons, so no leaves feed any.", "Carbon of the ripening weeks by age of leaf",
            ["Age of leaf", "Median", "Four of five seasons"],
            report.FeedingLeaves.Select(age => (IReadOnlyList<string>)
            [
                $"{age.FromD} to {age.ToD} days", ForecastSentences.Percent(age.P50),
                $"{ForecastSentences.Percent(age.P10)} to {ForecastSentences.Percent(age.P90)}",
            ]),
            "numbers");
    }

    private static void Options(HtmlText html, ForecastReport report, ChartShelf charts)
    {
        if (report.Options.Count < 2) return;
        html.Element("h2", "What could still be done")
            .Element("p", "The same vines in the same weather, with one thing done. See in the row first whether it fits.")
            .Table(
                "Options", ["Option", "Ripe, half by", "Four of five", "Ripe at all", "Days later", "Sugar at the end", "Leaf a vine at veraison"],
                report.Options.Select(option => (IReadOnlyList<string>)
                [
                    option.Name, .. ForecastSentences.Row(option.Target).Skip(1),
                    option.DaysLater is { } days ? Signed(days) : "–",
                    option.EndSugarBrix is { } brix ? $"{Measure.Number(brix, 1)} Brix" : "–",
                    option.LeafAreaM2PerVine is { } area ? Measure.LeafArea.Text(report.Units, area, 1) : "–",
                ]),
                "says");
    }

    private static void Notes(HtmlText html, ForecastReport report, ChartShelf charts)
    {
        html.Element("h2", "What the notes told");
        if (report.Notes.Count == 0)
        {
            html.Element("p", "No note up to this day tells of size, stage or fruit: the vine is the scenario's, and the range as wide as it comes.");
        }
        else
        {
            var used = report.Notes.Where(note => !note.Contradicts).OrderByDescending(note => note.Narrowing).ToList();
            html.Element("p", "How far each moved the vines, the strongest first: what they showed before any note and what they show now.")
                .TableOr(
                    "None could be used.", "Notes that moved the vines", ["Noted", "Before", "Now", "Narrower by"],
                    used.Select(note => (IReadOnlyList<string>)
                        [note.Words, note.Before, note.After, ForecastSentences.Percent(Math.Max(0, note.Narrowing))]),
                    "says");
            var against = report.Notes.Where(note => note.Contradicts).ToList();
            if (against.Count > 0)
            {
                html.Element("h3", "Notes that contradict the model, left out")
                    .List(against.Select(note => $"{note.Words}; the vines show {note.After}. Look whether it is mistyped, or of another block."));
            }
        }

        if (report.OddNotes.Count > 0) html.Element("h3", "Notes that stand apart from the others of their day").List(report.OddNotes);
        if (report.Warnings.Count > 0) html.Element("h3", "Not as planned").List(report.Warnings);
    }

    private static void Basis(HtmlText html, ForecastReport report, ChartShelf charts)
    {
        html.Element("h2", "What it rests on");
        if (report.Assumptions.Count > 0) html.List(report.Assumptions);
        var estimated = report.Vine.Weather.EstimatedInputs;
        html.Element("p", estimated.Count > 0
            ? $"Not in the weather file, and made from what is there: {string.Join(", ", estimated).Replace('_', ' ')}."
            : "Every quantity was in the weather file.");
        if (report.Understood.Count == 0) return;
        var marks = report.Understood.Select(value => value.Mark).Distinct().Order();
        html.List(marks.Select(mark =>
                $"{MarkWords.Of(mark)} ({report.Understood.Count(value => value.Mark == mark)}): {MarkWords.Meaning(mark)}"))
            .Table(
                "Values of the scenario", ["Key", "Value", "How sure", "Source"],
                report.Understood.Select(value => (IReadOnlyList<string>)
                    [value.Key, Quantities.ReadersUnits.Show(value.Value, report.Units), MarkWords.Of(value.Mark), value.Source]),
                "values");
    }

    private static void Cautions(HtmlText html, ForecastReport report, ChartShelf charts) => PageParts.Cautions(
        html, "Weather that has not come cannot be known: the range holds what other years were like, and one season of five lies outside it.");

    private static string Signed(double days) => Math.Round(days) switch
    {
        0 => "same",
        var whole => $"{(whole < 0 ? "−" : "+")}{Measure.Number(Math.Abs(whole), 0)} d",
    };
}

/// <summary>Charts by their stems, each to be put into the page where it belongs.</summary>
internal sealed class ChartShelf(IReadOnlyList<ChartPicture> charts)
{
    /// <summary>The chart; nothing where it was not drawn.</summary>
    public void Figure(HtmlText html, string stem, bool isAside = false)
    {
        if (charts.FirstOrDefault(chart => chart.Stem == stem) is { } chart) PageParts.Figure(html, chart, isAside);
    }
}
