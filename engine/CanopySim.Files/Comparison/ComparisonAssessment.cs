using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Files.Results;

namespace CanopySim.Files.Comparison;

/// <summary>
/// The sections of a comparison on canopy sheet, light and heat on the fruit and next year's buds, option beside
/// option.
/// </summary>
internal static class ComparisonAssessment
{
    private const string None = "–";

    public static void CanopySheet(HtmlText html, ComparisonReport report)
    {
        var options = report.Options;
        html.Element("h2", "Canopy sheet");
        var rows = SheetRows(options, report.Units).ToList();
        if (rows.Count == 0)
        {
            html.Element("p", "No option reached veraison, so there is no canopy to hold against published ranges.");
            return;
        }

        html.List(options.Select(option => SheetSentence(option, report.Units)))
            .Table(
                "Canopy sheet", ["Measure", "Published range", .. options.Select(option => option.Name)], rows, "sheet")
            .Element(
                "p", $"{AssessmentSections.HowSheetIsRead} Where a canopy has several walls, each option's own report "
                    + "has them one by one.", "quiet");
    }

    public static void FruitLight(HtmlText html, ComparisonReport report)
    {
        var lit = report.Options.Where(option => option.Summary.FruitLight is not null).ToList();
        if (lit.Count == 0)
        {
            html.Element("p", "No option reached veraison with fruit, so there is no ripening fruit to look at.");
            return;
        }

        html.List(report.Options.Select(LightSentence));
        html.Table(
            "Light on the fruit from veraison on", ["Option and side", .. AssessmentTables.LightHeads],
            Sides(lit, option => AssessmentTables.Light(option.Summary.FruitLight!)), "numbers sides");
    }

    public static void FruitHeat(HtmlText html, ComparisonReport report)
    {
        var (units, warm) =
            (report.Units, report.Options.Where(option => option.Summary.FruitHeat is not null).ToList());
        html.Element("h2", "Heat on exposed fruit");
        if (warm.Count == 0)
        {
            html.Element("p", "No option bore fruit, so nothing was exposed to heat.");
            return;
        }

        var heads = warm.Select(option => AssessmentTables.HeatHeads(option.Summary.FruitHeat!, units)).ToList();
        var isOne = heads.All(one => one.SequenceEqual(heads[0]));
        html.List(report.Options.Select(option => HeatSentence(option, units)))
            .Table(
                "Heat on exposed fruit",
                ["Option and side", .. isOne
                    ? heads[0]
                    : ["Warmest spot", "Hours at browning", "Hours at dying skin", "Days with browning"]],
                Sides(warm, option => AssessmentTables.Heat(option.Summary.FruitHeat!, units)), "numbers sides");
        foreach (var basis in warm.Select(option => AssessmentTables.HeatBasis(
            option.Summary.FruitHeat!, option.Scenario.FruitHeat.Compactness, units)).Distinct())
            html.Element("p", basis, "quiet");
        html.List(AssessmentSentences.SunburnCautions);
    }

    public static void NextYear(HtmlText html, ComparisonReport report)
    {
        html.Element("h2", "Next year's buds").List(report.Options.Select(NextYearSentence));
        if (report.Options.All(option => option.Summary.NextYear is null)) return;
        html.Table(
                "Next year's buds", report.Tables.Heads,
                report.Tables.Beside((_, option) => option.Summary.NextYear is { } year
                    ? AssessmentTables.NextYear(year, option.Scenario, report.Units)
                    : []),
                "numbers")
            .Element("p", AssessmentSections.HowBudsAreTold, "quiet");
    }

    public static string SheetSentence(ComparedOption option, Units units)
    {
        var rows = option.Season.Assessment.CanopySheet;
        return rows.Count == 0
            ? $"{option.Name} has no canopy sheet: veraison was not reached."
            : $"{option.Name}: {AssessmentSentences.Sheet(rows, units)}";
    }

    public static string LightSentence(ComparedOption option) => option.Summary.FruitLight is { } light
        ? $"{option.Name}: {AssessmentSentences.Light(light)}"
        : $"{option.Name}: veraison was not reached with fruit.";

    public static string HeatSentence(ComparedOption option, Units units) => option.Summary.FruitHeat is { } heat
        ? $"{option.Name}: {AssessmentSentences.Heat(heat, units)}"
        : $"{option.Name}: no fruit that could be too warm.";

    public static string NextYearSentence(ComparedOption option) => option.Summary.NextYear is { } year
        ? $"{option.Name}: {AssessmentSentences.NextYear(year)}"
        : $"{option.Name}: bloom was not reached, so no buds were laid down.";

    private static IEnumerable<IReadOnlyList<string>> SheetRows(IReadOnlyList<ComparedOption> options, Units units)
    {
        var sheets = options
            .Select(option => option.Season.Assessment.CanopySheet.Where(row => row.Wall is null)
                .ToDictionary(row => row.Item))
            .ToList();
        foreach (var item in sheets.SelectMany(sheet => sheet.Keys).Distinct())
        {
            var row = sheets.First(sheet => sheet.ContainsKey(item))[item];
            yield return
            [
                $"{row.Name}\n{row.Meaning}", $"{SheetMeasure.Range(row, units)}\n{AssessmentTables.SourceOf(row)}",
                .. sheets.Select(sheet => sheet.TryGetValue(item, out var own)
                    ? $"{AssessmentTables.ValueOf(own, units)}\n{AssessmentCsv.VerdictOf(own.Verdict)}"
                    : None),
            ];
        }

        if (options.All(option => option.Summary.CanopyScore is null)) yield break;
        yield return
        [
            "Scorecard of canopies\nColor and size of the leaves, ten points each, must be judged in the row.",
            "points that the model can see\nSmart & Robinson 1991, levels from memory",
            .. options.Select(option => option.Summary.CanopyScore is { } score
                ? $"{score.Points} of {score.MostPoints}"
                : None),
        ];
    }

    private static IEnumerable<IReadOnlyList<string>> Sides(
        IReadOnlyList<ComparedOption> options,
        Func<ComparedOption, IEnumerable<IReadOnlyList<string>>> sides) => options.SelectMany(option =>
            sides(option).Select(row => (IReadOnlyList<string>)[$"{option.Name}, {row[0]}", .. row.Skip(1)]));
}
