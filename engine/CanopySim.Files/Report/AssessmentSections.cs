using CanopySim.Files.Charts;
using CanopySim.Files.Results;
using CanopySim.Results;

namespace CanopySim.Files.Report;

/// <summary>
/// The sections of the report on canopy sheet, light and heat on the fruit, and next year's buds.
/// </summary>
internal static class AssessmentSections
{
    /// <summary>What stands under a canopy sheet.</summary>
    public const string HowSheetIsRead =
        "Canopy at veraison, fruit and prunings at harvest. Where a ± stands, the number was read with rods pushed "
        + "through the fruit zone, and that is its standard error.";

    /// <summary>What stands under next year's buds.</summary>
    public const string HowBudsAreTold =
        "The rule follows from published answers of buds to light and warmth, but was not tested as a whole; cultivars "
        + "differ. Cut buds open in winter before pruning by it.";

    /// <summary>Charts that stand in these sections.</summary>
    public static IReadOnlyList<string> Stems { get; } =
        [SeasonCharts.CanopySheet, SeasonCharts.FruitLight, SeasonCharts.FruitHeat];

    public static void Write(
        HtmlText html, SeasonResult season, Scenario scenario, Units units, IReadOnlyList<ChartPicture> pictures)
    {
        Sheet(html, season, units, PictureOf(SeasonCharts.CanopySheet));
        if (season.Summary.FruitHeat is { } heat)
        {
            Light(html, season.Summary.FruitLight, PictureOf(SeasonCharts.FruitLight));
            Heat(html, heat, scenario, units, PictureOf(SeasonCharts.FruitHeat));
        }

        if (season.Summary.NextYear is { } year) NextYear(html, year, scenario, units);

        ChartPicture? PictureOf(string stem) => pictures.FirstOrDefault(picture => picture.Stem == stem);
    }

    private static void Sheet(HtmlText html, SeasonResult season, Units units, ChartPicture? picture)
    {
        var rows = season.Assessment.CanopySheet;
        if (rows.Count == 0) return;
        html.Markup("<section>").Element("h2", "Canopy sheet").Element("p", AssessmentSentences.Sheet(rows, units));
        if (picture is not null) PageParts.Figure(html, picture);
        html.Table(
            "Canopy sheet", ["Measure", "Value", "Published range", "Verdict", "What it says", "Source"],
            rows.Select(row => (IReadOnlyList<string>)
            [
                AssessmentTables.NameOf(row), AssessmentTables.ValueOf(row, units), SheetMeasure.Range(row, units),
                AssessmentCsv.VerdictOf(row.Verdict), row.Meaning, AssessmentTables.SourceOf(row),
            ]),
            "values");
        html.Element("p", HowSheetIsRead, "quiet");
        if (season.Summary.CanopyScore is { } score) html.Element("p", AssessmentSentences.Score(score));
        html.Markup("</section>");
    }

    private static void Light(HtmlText html, FruitLightSummary? light, ChartPicture? picture)
    {
        html.Markup("<section>").Element("h2", "Light on the fruit");
        if (light is null)
        {
            html.Element("p", "Veraison was not reached with fruit, so there is no ripening fruit to look at.");
            return;
        }

        html.Element("p", AssessmentSentences.Light(light));
        if (picture is not null) PageParts.Figure(html, picture);
        html.Table(
            "Light on the fruit from veraison on", ["Side", .. AssessmentTables.LightHeads],
            AssessmentTables.Light(light), "numbers sides");
    }

    private static void Heat(
        HtmlText html, FruitHeatSummary heat, Scenario scenario, Units units, ChartPicture? picture)
    {
        html.Element("h2", "Heat on exposed fruit").Element("p", AssessmentSentences.Heat(heat, units));
        if (picture is not null) PageParts.Figure(html, picture);
        html.Table(
                "Heat on exposed fruit", ["Side", .. AssessmentTables.HeatHeads(heat, units)],
                AssessmentTables.Heat(heat, units), "numbers sides")
            .Element("p", AssessmentTables.HeatBasis(heat, scenario.FruitHeat.Compactness, units), "quiet")
            .List(AssessmentSentences.SunburnCautions)
            .Markup("</section>");
    }

    private static void NextYear(HtmlText html, NextYearSummary year, Scenario scenario, Units units) => html
        .Markup("<section>")
        .Element("h2", "Next year's buds")
        .Element("p", AssessmentSentences.NextYear(year))
        .Table(
            "Next year's buds", ["Measure", "Value"], AssessmentTables.NextYear(year, scenario, units), "numbers")
        .Element("p", HowBudsAreTold, "quiet")
        .Markup("</section>");
}
