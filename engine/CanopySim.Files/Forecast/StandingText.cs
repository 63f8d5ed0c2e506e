using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Files.Text;

namespace CanopySim.Files.Forecast;

/// <summary>
/// Growing tip, sprays and temperature index as lines of text, 80 columns wide or more: for a terminal, a pipe or a mail.
/// </summary>
public static class StandingText
{
    private const string Indent = "  ";
    private const int NameWidth = 30;

    /// <summary>The lines, each part under its name.</summary>
    /// <param name="vine">The vine on the day of the forecast.</param>
    /// <param name="readings">Its noted tips.</param>
    /// <param name="units">The reader's units.</param>
    /// <param name="width">Columns of the terminal.</param>
    public static IEnumerable<string> Lines(StandingVine vine, IReadOnlyList<TipReading> readings, Units units, int width)
    {
        // The latest day says most; the page has all of them.
        var paragraphs = TipWords.Paragraphs(readings, vine.Season.Tips.LastOrDefault(), units);
        var days = MildewWords.Days(vine);
        (string Name, IEnumerable<string> Said)[] parts =
        [
            ("Growing tip", readings.Count > 0 ? [paragraphs[^1]] : paragraphs),
            ("Sprays", [SprayWords.Opening(vine, units), .. SprayWords.Cautions(vine, units).Select(caution => $"Heed: {caution}")]),
            ("Powdery mildew", [MildewWords.State(days), MildewWords.Interval(vine, days), MildewWords.Limits(vine.Weather)]),
        ];
        foreach (var (name, said) in parts)
        {
            yield return "";
            yield return name;
            foreach (var line in said.SelectMany(sentence => WrappedText.Lines(sentence, width, Indent))) yield return line;
            if (name != "Sprays") continue;
            foreach (var line in SprayTable(vine, units)) yield return line;
            if (vine.Season.Sprays.Count == 0) continue;
            foreach (var line in WrappedText.Lines(SprayWords.Limits, width, Indent)) yield return line;
        }
    }

    // Shares not covered, as the page has them below its areas.
    private static IEnumerable<string> SprayTable(StandingVine vine, Units units)
    {
        var rows = SprayWords.Rows(vine, units).ToList();
        if (rows.Count == 0) yield break;
        yield return $"{Indent}{"leaf not covered, of all",-NameWidth}{"fruit zone",14}{"rest of shoots",16}{"laterals",14}";
        foreach (var row in rows)
        {
            var name = row[0].Split('\n');
            yield return $"{Indent}{Cut(name[0]),-NameWidth}{First(row[1]),14}{First(row[2]),16}{First(row[3]),14}";
            yield return $"{Indent}{Indent}{name[1]}";
        }
    }

    private static string First(string cell) => cell.Split('\n')[0].Replace(" of ", "/", StringComparison.Ordinal);

    private static string Cut(string name) => name.Length < NameWidth ? name : $"{name[..(NameWidth - 2)]}…";
}
