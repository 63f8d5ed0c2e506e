using System.Globalization;
using CanopySim.Files.Text;

namespace CanopySim.Files.Forecast;

/// <summary>A forecast as lines of text, a page of a terminal.</summary>
public static class ForecastText
{
    private const string Indent = "  ";
    private const int MostNotes = 6;
    private const int Bar = 40;

    /// <summary>The lines.</summary>
    /// <param name="report">The forecast.</param>
    /// <param name="content">What pages show of it.</param>
    /// <param name="width">Columns.</param>
    public static IEnumerable<string> Lines(ForecastReport report, ForecastContent content, int width)
    {
        var lines = new List<string>();
        Say(ForecastSentences.Opening(content));
        Say(ForecastSentences.Standing(content));
        if (ForecastSentences.Feeding(content) is { } feeding) Say(feeding);
        Head("When");
        lines.AddRange(Table(
            ["stage", "half of the seasons by", "four of five seasons", "reached by"],
            new[] { content.Bloom, content.Veraison, content.Target }.Select(ForecastSentences.Row), width));
        if (content.ChanceByWeek.Count > 0)
        {
            Head("Chance of the target sugar");
            lines.AddRange(content.ChanceByWeek.Select(week => Chance(week.Date, week.Chance)));
        }

        Head("Leaves that will feed the fruit");
        Say(content.LeafVerdict.Length > 0 ? content.LeafVerdict : "No fruit ripens in these seasons.");
        if (content.Options.Count > 0)
        {
            Head("What can still be done, against waiting");
            Say(content.OptionVerdict);
            lines.AddRange(Table(
                ["option", "ripe", "yield", "ripening capacity"],
                content.Options.Select(option => (IReadOnlyList<string>)
                [
                    $"{option.Words}, {ForecastSentences.Day(option.Day)}",
                    option.Fault.Length > 0 ? "not possible" : ForecastSentences.Later(option.DaysLater),
                    ForecastSentences.Change(option.Yield), ForecastSentences.Change(option.RipeningCapacity),
                ]),
                width));
        }

        Head("What the notes said");
        lines.AddRange(Table(
            ["noted", "vines before", "vines now"],
            report.Telling.Take(MostNotes).Select(told => NoteEffectWords.Row(told, content.Units))
                .Select(row => (IReadOnlyList<string>)[$"{row[0]}, {row[1]}: {row[2]}", row[3], row[4]]),
            width));
        foreach (var odd in content.OddNotes) Say(odd);
        foreach (var contradicting in report.Contradicting) Say(NoteEffectWords.Contradiction(contradicting, content.Units));
        if (report.Input.LaterNotes is var later and > 0)
        {
            Say($"{later} {(later == 1 ? "note is" : "notes are")} later than {ForecastSentences.Day(report.AsOf)} and "
                + $"{(later == 1 ? "was" : "were")} not used.");
        }

        lines.AddRange(StandingText.Lines(content.Vine, content.Tips, content.Units, width));
        Head("What this rests on");
        Say(content.Outlook);
        return lines;

        void Say(string sentence)
        {
            if (sentence.Length > 0) lines.AddRange(WrappedText.Lines(sentence, width));
        }

        void Head(string title) => lines.AddRange(["", title]);
    }

    private static string Chance(DateOnly day, double chance)
    {
        var bar = new string('#', (int)Math.Round(Bar * chance));
        return $"{Indent}{day.ToString("d MMM", CultureInfo.InvariantCulture),6} {ForecastSentences.Percent(chance),6}  {bar}".TrimEnd();
    }

    // Cells that are too wide for the terminal go on in a line of their own.
    private static IEnumerable<string> Table(IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows, int width)
    {
        List<IReadOnlyList<string>> all = [heads, .. rows];
        if (all.Count == 1) return [$"{Indent}nothing"];
        var widths = heads.Select((_, column) => all.Max(row => row[column].Length)).ToList();
        var fits = widths.Sum() + (2 * widths.Count) <= width;
        return all.SelectMany(row => fits
            ? [Joined(row, 0)]
            : (IEnumerable<string>)[$"{Indent}{row[0]}", Indent + Joined([.. row.Skip(1)], 1)]);

        string Joined(IReadOnlyList<string> cells, int from) =>
            (Indent + string.Join("  ", cells.Select((cell, i) => cell.PadRight(widths[from + i])))).TrimEnd();
    }
}
