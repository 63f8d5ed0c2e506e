using CanopySim.Files.Charts;
using CanopySim.Files.Quantities;
using CanopySim.Files.Scenarios;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Files.Report;

/// <summary>
/// The report of a season: one HTML file that opens anywhere, without network or script. It answers first, shows why,
/// then
/// gives the numbers, and last what they rest on.
/// </summary>
public static class ReportPage
{
    /// <remarks>Without the day on which it is <paramref name="printed"/>, the season's last day stands in the foot
    /// alone.</remarks>
    public static string Html(
        SeasonResult season,
        Scenario scenario,
        Units units,
        IReadOnlyList<UnderstoodValue> understood,
        IReadOnlyList<ChartPicture> pictures,
        DateOnly? printed = null,
        IReadOnlyList<ChartPicture>? views = null,
        CanopyPerspective? perspective = null)
    {
        var html = new HtmlText();
        var foot = $"{season.Summary.Scenario}, season of {SeasonSentences.Year(season)}"
            + (printed is { } day ? $", report of {SeasonSentences.Date(day)}"
                : $", ended {SeasonSentences.Date(season.Summary.Dates.End)}");
        PageParts.Head(html, $"{season.Summary.Scenario}, season of {SeasonSentences.Year(season)}", foot);
        var why = pictures.FirstOrDefault(p => p.Stem == SeasonCharts.CarbonByLeafAge) ?? pictures.FirstOrDefault();
        var tables = new SeasonTables(season, scenario, units);
        var shares = pictures.FirstOrDefault(p => p.Stem == SeasonCharts.FruitCarbonByLeafAge);
        Answer(html, season, scenario, units, why);
        Shares(html, tables, shares);
        Numbers(html, season, tables, views ?? [], perspective ?? CanopyPerspective.None);
        Work(html, season, tables);
        AssessmentSections.Write(html, season, scenario, units, pictures);
        Pictures(html, pictures.Where(p => p != why && p != shares && !AssessmentSections.Stems.Contains(p.Stem)));
        Basis(html, season, understood, units);
        Checks(html, tables);
        PageParts.Cautions(html);
        html.Markup("</section>");
        return PageParts.End(html, foot);
    }

    private static void Answer(HtmlText html, SeasonResult season, Scenario scenario, Units units, ChartPicture? why)
    {
        html.Markup("<section>").Element("h1", SeasonSentences.Opening(season, units));
        if (season.Summary.Dates.Veraison is not null && FeedingLeaves.HasFruit(season.Summary))
            html.Element("p", SeasonSentences.Ripeness(season, scenario.Season.TargetSugar), "lead");
        html.Element("p", $"{season.Summary.Scenario}, {scenario.Cultivar.Name}, season of "
            + $"{SeasonSentences.Year(season)}. "
            + "A simulated season: what the model says, not what was measured. " + EstimatedBriefly(season), "quiet");
        if (why is not null) PageParts.Figure(html, why);
        html.Markup("</section>");
    }

    /// <summary>The same answer in full.</summary>
    private static void Shares(HtmlText html, SeasonTables tables, ChartPicture? picture)
    {
        var shares = tables.FeedingLeaves().ToList();
        if (shares.Count == 0) return;
        html.Markup("<section>")
            .Element("h2", "Which leaves fed the fruit")
            .Element("p", "Shares of the carbon that the leaves gained, nights included, from veraison to the target "
                + "sugar, or to the season's end where that came first. Sugar is made of this carbon.");
        if (picture is not null) PageParts.Figure(html, picture);
        html.Table("Carbon of the ripening weeks by age of leaf", ["Age of leaf", "Share"], shares, "numbers")
            .Markup("</section>");
    }

    private static string EstimatedBriefly(SeasonResult season) =>
        (season.Summary.EstimatedInputs.Count, season.Summary.FilledGaps) switch
        {
            (0, 0) => "All weather was given.",
            (0, _) => "Gaps of the weather were filled, as said below.",
            _ when season.Summary.EstimatedInputs.Contains(EstimatedInput.GeneratedWeather) =>
                "The weather is generated: like the file's record, but none of its days."
                + (season.Summary.EstimatedInputs.Contains(EstimatedInput.ShiftedWeather) ? " It is shifted, as said below." : ""),
            _ => "Part of the weather is estimated, as said below.",
        };

    private static void Numbers(
        HtmlText html, SeasonResult season, SeasonTables tables, IReadOnlyList<ChartPicture> views,
        CanopyPerspective perspective)
    {
        html.Markup("<section>").Element("h2", "Stages")
            .Table("Stages", ["Stage", "This model", "Published heat sum", "This model comes"], tables.Stages(),
                "dates")
            .Element("p", $"How the season ended: {SeasonSentences.Reason(season.Summary)}. The published sums count "
                + "daily means above 0 °C from day 60 of the year, from day 242 in the south; they stand here for "
                + $"comparison and move nothing. {tables.ThermalTime()}", "quiet");
        html.Element("h2", "Canopy at veraison");
        PerspectiveParts.Write(html, perspective);
        PageParts.Views(html, views);
        if (views.Count > 0) PageParts.Key(html);
        else if (perspective.Picture is not null) PageParts.AgeKey(html);
        if (season.Summary.Canopy is { } canopy) html.Table(
            "Canopy at veraison", ["Measure", "Value"], tables.Canopy(canopy), "numbers");
        else html.Element("p", "Veraison was not reached, so there is no canopy to describe at it.");
        html.Element("h2", "Harvest");
        if (season.Summary.Harvest is { } harvest) html.Table(
            "Harvest", ["Measure", "Value"], tables.Harvest(harvest), "numbers");
        else
        {
            html.Element("p", season.Summary.Dates.Veraison is null
                ? "Veraison was not reached, so there was nothing to harvest."
                : "The vine carried no fruit to harvest.");
        }


        html.Element("h2", "The season of one vine")
            .Table("The season of one vine", ["Measure", "Value"], tables.Totals(), "numbers")
            .Markup("</section>");
    }

    /// <summary>Work in the canopy and what came of it; nothing where none was planned.</summary>
    private static void Work(HtmlText html, SeasonResult season, SeasonTables tables)
    {
        var (warnings, cautions) = (season.Summary.Warnings, season.Summary.Cautions);
        if (season.Work.Count + warnings.Count + cautions.Count == 0) return;
        html.Markup("<section>").Element("h2", "Work in the canopy");
        if (season.Work.Count > 0)
        {
            html.Table(
                    "Work in the canopy",
                        ["Day", "What was done", "Shoots", "Clusters", "Leaves", "Leaf area a vine", "Fruit a vine"],
                    tables.Work(), "values")
                .Element("p", "Shoots, clusters and leaves are those of all vines that were simulated; leaf area and "
                    + "fruit are what went, or what a spray reached.", "quiet");
        }
        else
        {
            html.Element("p", "Nothing was done.");
        }

        if (warnings.Count > 0) html.Element("h3", "Not as planned").List(warnings);
        if (cautions.Count > 0) html.Element("h3", "Heed").List(cautions);
        html.Markup("</section>");
    }

    private static void Pictures(HtmlText html, IEnumerable<ChartPicture> pictures)
    {
        html.Markup("<section>").Element("h2", "More pictures");
        foreach (var picture in pictures) PageParts.Figure(html, picture);
        html.Markup("</section>");
    }

    private static void Basis(HtmlText html, SeasonResult season, IReadOnlyList<UnderstoodValue> understood, Units units)
    {
        html.Markup("<section>").Element("h2", "Weather that was estimated");
        var (estimated, gaps) = (season.Summary.EstimatedInputs, season.Summary.FilledGaps);
        if (estimated.Count > 0)
            html.Element("p", "Not in the weather file, and made from what is there:").List(estimated);
        else html.Element("p", "Nothing: every quantity was in the weather file.");
        html.Element("p", gaps switch
        {
            0 => "No gap was filled.",
            1 => "One gap was filled.",
            _ => $"{gaps} gaps were filled.",
        });
        html.Element("h2", "What the model assumes");
        var marks = understood.Select(v => v.Mark).Distinct().Order().ToList();
        if (marks.Count > 0)
        {
            html.List(marks.Select(m =>
                $"{MarkWords.Of(m)} ({understood.Count(v => v.Mark == m)}): {MarkWords.Meaning(m)}"))
                .Table(
                    "Values that the model used", ["Key", "Value", "How sure", "Source"],
                    understood.Select(v => (IReadOnlyList<string>)
                        [v.Key, ReadersUnits.Show(v.Value, units), MarkWords.Of(v.Mark), v.Source]),
                    "values");
        }
        else
        {
            html.Element("p", "The values were not handed to this report; the command check prints them.");
        }

        html.Markup("</section>");
    }

    private static void Checks(HtmlText html, SeasonTables tables) => html
        .Markup("<section>")
        .Element("h2", "Checks")
        .Element("p", PageParts.HowChecksRead)
        .Table("Checks", ["Check", "Value"], tables.Checks(), "numbers");
}
