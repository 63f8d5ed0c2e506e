using System.Globalization;
using CanopySim.Files.Charts;

namespace CanopySim.Files.Comparison;

/// <summary>A comparison as lines of text no wider than 80 columns: for a terminal, a pipe or a mail.</summary>
public static class ComparisonText
{
    public const int Width = 80;

    private const int NameWidth = 20;
    private const int DateWidth = 9;
    private const int Columns = 7;

    public static IEnumerable<string> Lines(IReadOnlyList<ComparedOption> options, Units units)
    {
        foreach (var line in Wrapped(ComparisonSentences.Opening(options))) yield return line;
        yield return "";
        var figures = GrowerFigure.All.Take(Columns).ToList();
        var widths = figures.Select(figure => WidthOf(figure, options, units)).ToList();
        yield return Row("", "ripe", figures.Select(figure => figure.Head), widths);
        yield return Row("", "", figures.Select(figure => ShortUnit(figure.Unit(units))), widths);
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
                figures.Select(figure => figure.Number(option.Summary, units)), widths);
            if (option == options[0]) continue;
            yield return Row(
                "  difference", ComparisonSentences.DaysLater(option, options[0]) is { } days ? DaysText(days) : "–",
                figures.Select(figure => figure.Difference(option.Summary, options[0].Summary, units)), widths);
        }
    }

    private static string DaysText(int days) =>
        days == 0 ? "same" : FormattableString.Invariant($"{(days < 0 ? "−" : "+")}{Math.Abs(days)} d");

    private static int WidthOf(GrowerFigure figure, IReadOnlyList<ComparedOption> options, Units units) => options
        .SelectMany(option => (string[])[figure.Number(option.Summary, units),
            figure.Difference(option.Summary, options[0].Summary, units)])
        .Append(figure.Head).Append(ShortUnit(figure.Unit(units)))
        .Max(text => text.Length);

    private static string ShortUnit(string unit) => unit == Measure.YieldPerArea.Us ? "tn/ac" : unit;

    private static string Row(string name, string date, IEnumerable<string> cells, IReadOnlyList<int> widths) =>
        (name.PadRight(NameWidth) + date.PadLeft(DateWidth - 2)
            + string.Concat(cells.Select((cell, i) => " " + cell.PadLeft(widths[i])))).TrimEnd();

    private static IEnumerable<string> Wrapped(string text)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > Width)
            {
                yield return line;
                line = "";
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        yield return line;
    }
}
