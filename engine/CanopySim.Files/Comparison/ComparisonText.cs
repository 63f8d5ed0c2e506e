using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Files.Text;

namespace CanopySim.Files.Comparison;

/// <summary>
/// A comparison as lines of text, 80 columns wide or more: for a terminal, a pipe or a mail. First when each option is
/// ripe, then the grower's figures with what they differ by, then each option in sentences, last what went wrong and
/// what to heed.
/// </summary>
public static class ComparisonText
{
    /// <summary>What fits every terminal [columns].</summary>
    public const int Width = 80;

    private const int NameWidth = 20;
    private const int DateWidth = 7;
    private const string Indent = "  ";

    /// <summary>So many options are told in sentences; of more, the report does.</summary>
    private const int MostTold = 4;

    public static IEnumerable<string> Lines(IReadOnlyList<ComparedOption> options, Units units, int width = Width)
    {
        foreach (var line in WrappedText.Lines(ComparisonSentences.Opening(options), width)) yield return line;
        var rest = GrowerFigure.All.ToList();
        for (var isFirst = true; rest.Count > 0; isFirst = false)
        {
            var widths = rest.Select(figure => WidthOf(figure, options, units)).ToList();
            var room = width - NameWidth - (isFirst ? DateWidth : 0);
            var count = 1;
            while (count < rest.Count && widths.Take(count + 1).Sum(column => column + 1) <= room) count++;
            yield return "";
            foreach (var line in Table(options, units, [.. rest.Take(count)], widths, isFirst)) yield return line;
            rest.RemoveRange(0, count);
        }

        foreach (var option in options.Count <= MostTold ? options : options.Skip(1))
        {
            yield return "";
            yield return option.Name;
            foreach (var said in options.Count <= MostTold ? Told(option, options[0], units) : [Differs(option)])
            {
                foreach (var line in WrappedText.Lines(said, width, Indent)) yield return line;
            }
        }

        foreach (var line in Heeded(options, width)) yield return line;

        string Differs(ComparedOption option) => ScenarioDifferences.InWords(option, options[0], units);
    }

    private static IEnumerable<string> Table(
        IReadOnlyList<ComparedOption> options, Units units, IReadOnlyList<GrowerFigure> figures,
        IReadOnlyList<int> widths, bool hasDates)
    {
        yield return Row("", "ripe", figures.Select(figure => figure.Head));
        yield return Row("", "", figures.Select(figure => ShortUnit(figure.Unit(units))));
        foreach (var option in options)
        {
            var name = option.Name;
            if (name.Length > NameWidth)
            {
                yield return name;
                name = "";
            }

            yield return Row(
                name, option.Summary.Dates.TargetSugar?.ToString("d MMM", CultureInfo.InvariantCulture) ?? "not",
                figures.Select(figure => figure.Number(option.Summary, units)));
            if (option == options[0]) continue;
            yield return Row(
                $"{Indent}difference",
                ComparisonSentences.DaysLater(option, options[0]) is { } days ? DaysText(days) : "–",
                figures.Select(figure => figure.Difference(option.Summary, options[0].Summary, units)));
        }

        string Row(string name, string date, IEnumerable<string> cells) =>
            (name.PadRight(NameWidth) + (hasDates ? date.PadLeft(DateWidth) : "")
                + string.Concat(cells.Select((cell, i) => " " + cell.PadLeft(widths[i])))).TrimEnd();
    }

    // Each sentence without the option's name, which stands over them.
    private static IEnumerable<string> Told(ComparedOption option, ComparedOption first, Units units)
    {
        if (option != first) yield return $"Differs: {Own(ScenarioDifferences.InWords(option, first, units), option)}";
        var work = ComparisonWork.Lines(option, units).ToList();
        if (work.Count == 0) yield return "Work: nothing was done in the canopy.";
        foreach (var line in work) yield return $"Work: {line}.";
        yield return $"Canopy sheet: {Own(ComparisonAssessment.SheetSentence(option, units), option)}";
        yield return $"Light on the fruit: {LightOfSides(option)}.";
        yield return $"Heat: {Own(ComparisonAssessment.HeatSentence(option, units), option)}";
        yield return $"Next year: {Own(ComparisonAssessment.NextYearSentence(option), option)}";
    }

    private static IEnumerable<string> Heeded(IReadOnlyList<ComparedOption> options, int width)
    {
        var warnings = ComparisonWork.Warnings(options).ToList();
        if (warnings.Count > 0)
        {
            yield return "";
            yield return "Not as planned";
            foreach (var line in warnings.SelectMany(warning => WrappedText.Lines(warning, width, Indent))) yield return line;
        }

        var cautions = ComparisonWork.Cautions(options).ToList();
        if (options.Any(option => option.Summary.FruitHeat is { HighestSurfaceDegC: var warmest } heat
            && warmest >= heat.BrowningDegC))
            cautions.InsertRange(0, AssessmentSentences.SunburnCautions);
        if (cautions.Count == 0) yield break;
        yield return "";
        yield return "Heed";
        foreach (var line in cautions.SelectMany(caution => WrappedText.Lines(caution, width, Indent))) yield return line;
    }

    private static string LightOfSides(ComparedOption option)
    {
        if (option.Summary.FruitLight is not { } light) return "veraison was not reached with fruit";
        var walls = light.Sides.Max(side => side.Side.Wall);
        var sides = light.Sides.Select(side =>
            $"{AssessmentTables.SideOf(side.Side, walls)} {Measure.Number(side.ParMolM2D, 1)}");
        var noon = light.MorningShare is { } ? $", {AssessmentTables.Percent(light.MorningShare)} of it before noon"
            : "";
        return $"{string.Join(", ", sides)} mol of PAR a day on each square meter of clusters{noon}";
    }

    private static string Own(string sentence, ComparedOption option) =>
        sentence.StartsWith($"{option.Name}: ", StringComparison.Ordinal) ? sentence[(option.Name.Length + 2)..]
            : sentence;

    private static string DaysText(int days) =>
        days == 0 ? "same" : FormattableString.Invariant($"{(days < 0 ? "−" : "+")}{Math.Abs(days)} d");

    private static int WidthOf(GrowerFigure figure, IReadOnlyList<ComparedOption> options, Units units) => options
        .SelectMany(option => (string[])[figure.Number(option.Summary, units),
            figure.Difference(option.Summary, options[0].Summary, units)])
        .Append(figure.Head).Append(ShortUnit(figure.Unit(units)))
        .Max(text => text.Length);

    private static string ShortUnit(string unit) => unit == Measure.YieldPerArea.Us ? "tn/ac" : unit;
}
