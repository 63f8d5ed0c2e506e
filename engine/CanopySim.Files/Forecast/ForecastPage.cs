using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Parameters;

namespace CanopySim.Files.Forecast;

/// <summary>
/// The page of a forecast: one HTML file like a season's content. It opens with the day of ripeness and its range, shows why,
/// then what the notes told, how the vine stands, and last what all of it rests on.
/// </summary>
public static class ForecastPage
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "forecast.html";

    /// <summary>The sections in their order: whether one begins a page where it is printed, and what it adds.</summary>
    private static readonly IReadOnlyList<(bool BeginsPage, Action<HtmlText, ForecastContent, ChartShelf> Add)> Sections =
    [
        (true, Answer), (false, Stages), (true, Growth), (false, Leaves), (false, Options), (false, Notes),
        (true, StandingSections.Tips), (true, StandingSections.Sprays), (false, StandingSections.Mildew), (true, Basis),
        (false, Cautions),
    ];

    /// <summary>The page.</summary>
    /// <param name="content">What it is made of.</param>
    /// <param name="charts">What <see cref="ForecastCharts"/> drew.</param>
    public static string Html(ForecastContent content, IReadOnlyList<ChartPicture> charts)
    {
        var html = new HtmlText();
        var name = content.Vine.Season.Summary.Scenario;
        var title = $"{name}, forecast of {SeasonSentences.Date(content.AsOf)}";
        var foot = title + (content.Printed is { } day ? $", made on {SeasonSentences.Date(day)}" : "");
        PageParts.Head(html, title, foot);
        var shelf = new ChartShelf(charts);
        foreach (var (beginsPage, add) in Sections)
        {
            var section = new HtmlText();
            add(section, content, shelf);
            if (section.ToString().Length == 0) continue;
            html.Markup(beginsPage ? "<section>" : "<section class=\"follows\">").Markup(section.ToString()).Markup("</section>");
        }

        return PageParts.End(html, foot);
    }

    private static void Answer(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        html.Element("h1", ForecastSentences.Opening(content)).Element("p", ForecastSentences.Standing(content), "lead");
        if (ForecastSentences.Feeding(content) is { } feeding) html.Element("p", feeding, "lead");
        html.Element(
            "p",
            $"{content.Vine.Season.Summary.Scenario}, {content.Vine.Scenario.Cultivar.Name}. What the model says, not what was "
                + $"measured: {content.Outlook}", "quiet");
        html.Markup("<div class=\"pair\">");
        charts.Figure(html, ForecastCharts.Sugar);
        charts.Figure(html, ForecastCharts.Chance);
        html.Markup("</div>");
    }

    private static void Stages(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        html.Element("h2", "When");
        html.Table(
            "Stages", ["Stage", "Half of the seasons by", "Four of five seasons", "Reached by"],
            [.. ((StageOutlook[])[content.Bloom, content.Veraison, content.Target]).Select(ForecastSentences.Row)], "dates");
        if (content.ChanceByWeek.Count == 0) return;
        html.Table(
            "Chance of the target by date", ["By", $"Chance of {Measure.Brix(content.TargetBrix)}"],
            content.ChanceByWeek.Select(week => (IReadOnlyList<string>)
                [ForecastSentences.Day(week.Date), ForecastSentences.Percent(week.Chance)]),
            "numbers");
    }

    private static void Growth(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        html.Element("h2", "Shoots and leaves").Markup("<div class=\"pair\">");
        charts.Figure(html, ForecastCharts.ShootLength);
        charts.Figure(html, ForecastCharts.LeafArea);
        html.Markup("</div>");
    }

    private static void Leaves(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        html.Element("h2", "Leaves that will feed the fruit")
            .Element("p", "Shares of the carbon that the leaves gain from veraison to the target sugar, nights included. Sugar is made "
                + "of this carbon.");
        if (content.LeafVerdict.Length > 0) html.Element("p", content.LeafVerdict);
        else if (content.AtVeraison is { } at)
            html.Element("p", ForecastSentences.AtVeraison(at.LeafArea, at.YoungShare, content.Units));
        charts.Figure(html, ForecastCharts.FeedingLeaves, isAside: true);
        html.TableOr(
            "No fruit ripens in these seasons, so no leaves feed any.", "Carbon of the ripening weeks by age of leaf",
            ["Age of leaf", "Mean", "Four of five seasons"],
            content.FeedingLeaves.Select(age => (IReadOnlyList<string>)
            [
                $"{age.FromD} to {age.ToD} days", ForecastSentences.Percent(age.Mean),
                $"{ForecastSentences.Percent(age.P10)} to {ForecastSentences.Percent(age.P90)}",
            ]),
            "numbers");
    }

    private static void Options(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        if (content.Options.Count == 0) return;
        html.Element("h2", "What could still be done");
        if (content.OptionVerdict.Length > 0) html.Element("p", content.OptionVerdict);
        html.Element("p", "Each tried alone on some of the same vines in the same weather: median, in brackets four of five. See in the row "
                + "first whether it fits.")
            .Table(
                "Options", ["Option", "Vines tried", "Ripe", "Yield", "Ripening capacity"],
                content.Options.Select(option => (IReadOnlyList<string>)(option.Fault.Length > 0
                    ? [$"{option.Words} on {ForecastSentences.Day(option.Day)}", "–", option.Fault, "–", "–"]
                    :
                    [
                        $"{option.Words} on {ForecastSentences.Day(option.Day)}", $"{option.Members}",
                        ForecastSentences.Later(option.DaysLater), ForecastSentences.Change(option.Yield),
                        ForecastSentences.Change(option.RipeningCapacity),
                    ])),
                "says");
    }

    private static void Notes(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        html.Element("h2", "What the notes told");
        if (content.Notes.Count == 0)
        {
            html.Element("p", "No note up to this day tells of size, stage or fruit: the vine is the scenario's, and the range as wide as it comes.");
        }
        else
        {
            var used = content.Notes.Where(note => !note.Contradicts).OrderByDescending(note => note.Narrowing).ToList();
            html.Element("p", "How far each moved the vines, the strongest first: what they showed before any note and what they show now.")
                .TableOr(
                    "None could be used.", "Notes that moved the vines", ["Noted", "Before", "Now", "Narrower by"],
                    used.Select(note => (IReadOnlyList<string>)
                        [note.Words, note.Before, note.After, ForecastSentences.Percent(Math.Max(0, note.Narrowing))]),
                    "says");
            var against = content.Notes.Where(note => note.Contradicts).ToList();
            if (against.Count > 0)
            {
                html.Element("h3", "Notes that contradict the model, left out")
                    .List(against.Select(note => $"{note.Words}; the vines show {note.After}. Look whether it is mistyped, or of another block."));
            }
        }

        if (content.OddNotes.Count > 0) html.Element("h3", "Notes that stand apart from the others of their day").List(content.OddNotes);
        if (content.Warnings.Count > 0) html.Element("h3", "Not as planned").List(content.Warnings);
    }

    private static void Basis(HtmlText html, ForecastContent content, ChartShelf charts)
    {
        html.Element("h2", "What it rests on");
        if (content.Assumptions.Count > 0) html.List(content.Assumptions);
        var estimated = content.Vine.Weather.EstimatedInputs;
        html.Element("p", estimated.Count > 0
            ? $"Not in the weather file, and made from what is there: {string.Join(", ", estimated).Replace('_', ' ')}."
            : "Every quantity was in the weather file.");
        if (content.Understood.Count == 0) return;
        var marks = content.Understood.Select(value => value.Mark).Distinct().Order();
        html.List(marks.Select(mark =>
                $"{MarkWords.Of(mark)} ({content.Understood.Count(value => value.Mark == mark)}): {MarkWords.Meaning(mark)}"))
            .Markup("<div class=\"onscreen\">")
            .Table(
                "Values of the scenario", ["Key", "Value", "How sure", "Source"],
                content.Understood.Select(value => (IReadOnlyList<string>)
                    [value.Key, Quantities.ReadersUnits.Show(value.Value, content.Units), MarkWords.Of(value.Mark), value.Source]),
                "values")
            .Markup("</div>")

            // On paper only what a reader should doubt; who wants every source has the page on a screen.
            .Markup("<div class=\"onpaper\">")
            .Element(
                "p", $"Printed here are those that are assumed or from memory; all {content.Understood.Count} with their sources stand in "
                    + "the file of this page, and canopysim check prints them.", "quiet")
            .Markup("<ul class=\"brief\">");
        foreach (var value in content.Understood.Where(value => value.Mark is Mark.Assumed or Mark.Recalled))
            html.Element("li", $"{value.Key} {Quantities.ReadersUnits.Show(value.Value, content.Units)} ({MarkWords.Of(value.Mark)})");
        html.Markup("</ul>").Markup("</div>");
    }

    private static void Cautions(HtmlText html, ForecastContent content, ChartShelf charts) => PageParts.Cautions(
        html, "Weather that has not come cannot be known: the range holds what other years were like, and one season of five lies outside it.");
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
