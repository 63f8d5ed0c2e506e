using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Files.Results;
using CanopySim.Results;

namespace CanopySim.Files.Report;

/// <summary>The sections of the report on canopy sheet, light and heat on the fruit, and next year's buds.</summary>
internal static class AssessmentSections
{
    /// <summary>Charts that stand in these sections.</summary>
    public static IReadOnlyList<string> Stems { get; } = [SeasonCharts.CanopySheet, SeasonCharts.FruitLight, SeasonCharts.FruitHeat];

    public static void Write(HtmlText html, SeasonResult season, Scenario scenario, Units units, IReadOnlyList<ChartPicture> pictures)
    {
        Sheet(html, season, units, PictureOf(SeasonCharts.CanopySheet));
        if (season.Summary.FruitHeat is { } heat)
            Fruit(html, season, heat, scenario, units, PictureOf(SeasonCharts.FruitLight), PictureOf(SeasonCharts.FruitHeat));
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
                [NameOf(row), ValueOf(row, units), SheetMeasure.Range(row, units), AssessmentCsv.VerdictOf(row.Verdict), row.Meaning, SourceOf(row)]),
            "values");
        html.Element(
            "p",
            "Canopy at veraison, fruit and prunings at harvest. Where a ± stands, the number was read with rods pushed through the fruit zone, and that is its standard error.", "quiet");
        if (season.Summary.CanopyScore is { } score)
        {
            html.Element(
                "p",
                $"On the scorecard of canopies it would have {score.Points} of the {score.MostPoints} points that the model can see "
                + "(levels from memory, Smart & Robinson 1991). Color and size of the leaves, ten points each, must be judged in the row.");
        }

        html.Markup("</section>");
    }

    private static void Fruit(
        HtmlText html, SeasonResult season, FruitHeatSummary heat, Scenario scenario, Units units, ChartPicture? light, ChartPicture? warm)
    {
        html.Markup("<section>").Element("h2", "Light on the fruit");
        if (season.Summary.FruitLight is { } fruit)
        {
            html.Element("p", AssessmentSentences.Light(fruit));
            if (light is not null) PageParts.Figure(html, light);
            html.Table(
                "Light on the fruit from veraison on",
                ["Side", "Clusters", "PAR a day, mol/m²", "Of the light over the canopy", "Surface in the sun", "Before noon"],
                fruit.Sides.Select(side => (IReadOnlyList<string>)
                [
                    SideOf(side.Side, fruit.Sides.Max(s => s.Side.Wall)), $"{side.Clusters}", Measure.Number(side.ParMolM2D, 1),
                    Percent(side.ShareOfIncident), Percent(side.SunlitShare), Percent(side.MorningShare),
                ]),
                "numbers sides");
        }
        else
        {
            html.Element("p", "Veraison was not reached with fruit, so there is no ripening fruit to look at.");
        }

        html.Element("h2", "Heat on exposed fruit").Element("p", AssessmentSentences.Heat(heat, units));
        if (warm is not null) PageParts.Figure(html, warm);
        var (browning, necrosis) = (Measure.Temperature(units, heat.BrowningDegC, 0), Measure.Temperature(units, heat.NecrosisDegC, 0));
        html.Table(
                "Heat on exposed fruit",
                ["Side", "Warmest spot", $"Hours at {browning} and more", $"Hours at {necrosis} and more", $"Days with {browning}"],
                heat.Sides.Select(side => (IReadOnlyList<string>)
                [
                    SideOf(side.Side, heat.Sides.Max(s => s.Side.Wall)), Measure.Temperature(units, side.HighestSurfaceDegC, 1),
                    Measure.Number(side.HoursAtBrowning, 1), Measure.Number(side.HoursAtNecrosis, 1), $"{side.DaysAtBrowning}",
                ]),
                "numbers sides")
            .Element(
                "p",
                $"Hours are means over the clusters of a side, from set to the season's end. "
                + $"The warmest spot is that of a berry that faces the sun in the hour's mean wind (half of that over the canopy), "
                + $"of clusters {Measure.Number(100 * scenario.FruitHeat.Compactness, 0)} % closed. "
                + $"Browning from about {browning} and dead skin from about {necrosis} are rough guides from memory.", "quiet")
            .List(AssessmentSentences.SunburnCautions)
            .Markup("</section>");
    }

    private static void NextYear(HtmlText html, NextYearSummary year, Scenario scenario, Units units) => html
        .Markup("<section>")
        .Element("h2", "Next year's buds")
        .Element("p", AssessmentSentences.NextYear(year))
        .Table(
            "Next year's buds", ["Measure", "Value"],
            [
                ["Expected fruitfulness, share of the best", Percent(year.Fruitfulness)],
                ["From the darkest to the brightest shoot", $"{Percent(year.Least)} to {Percent(year.Most)}"],
                ["Share that light leaves", Percent(year.LightFactor)],
                ["Share that warmth leaves", Percent(year.TemperatureFactor)],
                ["PAR about noon on the lowest leaves", $"{Measure.Number(year.ParUmolM2S, 0)} µmol m⁻² s⁻¹"],
                ["PAR from which it is enough", $"{Measure.Number(scenario.Fruitfulness.FullLight, 0)} µmol m⁻² s⁻¹"],
                ["Warm enough from", Measure.Temperature(units, scenario.Fruitfulness.FullTemperature, 1)],
                ["Buds were laid down", $"{SeasonSentences.Date(year.From)} to {SeasonSentences.Date(year.To)}"],
            ], "numbers")
        .Element("p", "The rule follows from published answers of buds to light and warmth, but was not tested as a whole; cultivars differ. Cut buds open in winter before pruning by it.", "quiet")
        .Markup("</section>");

    private static string NameOf(CanopySheetRow row) => row.Wall is { } wall ? $"{row.Name}, wall {wall}" : row.Name;

    private static string ValueOf(CanopySheetRow row, Units units) => row.Value is not { } value || !double.IsFinite(value) ? "–"
        : row.SamplingError is { } error ? $"{SheetMeasure.Number(row, value, units)} ± {SheetMeasure.Text(row, error, units)}"
        : SheetMeasure.Text(row, value, units);

    private static string SourceOf(CanopySheetRow row) => row.Source.Contains("from memory", StringComparison.Ordinal) || row.Source.StartsWith("derived", StringComparison.Ordinal)
        ? row.Source
        : $"{row.Source} ({MarkWords.Of(row.Mark)})";

    private static string SideOf(FruitSide side, int lastWall) => lastWall > 0 ? $"{side.Facing} side of wall {side.Wall + 1}" : $"{side.Facing} side";

    private static string Percent(double? share) => share is { } s && double.IsFinite(s) ? $"{Measure.Number(100 * s, 0)} %" : "–";
}
