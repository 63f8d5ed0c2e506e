using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Files.Text;
using CanopySim.Fitting;

namespace CanopySim.Files.Forecast;

/// <summary>A forecast as lines of text, a page of a terminal.</summary>
public static class ForecastText
{
    // Notes of which so many are told.
    private const int MostNotes = 6;

    /// <summary>The lines.</summary>
    /// <param name="report">The forecast.</param>
    /// <param name="units">Units of the reader.</param>
    /// <param name="width">Columns.</param>
    public static IEnumerable<string> Lines(ForecastReport report, Units units, int width)
    {
        var lines = new List<string>();
        Say(ForecastSentences.Opening(report));
        Say(ForecastSentences.Standing(report, units));
        Say(ForecastSentences.Stages(report));
        Head("Chance of the target sugar");
        lines.AddRange(Chances(report));
        Head("Leaves that will feed the fruit");
        Say(ForecastSentences.Feeding(report));
        Say(ForecastSentences.EnoughLeaf(report, units));
        if (report.Forecast.Options.Count > 0)
        {
            Head("What can still be done, against waiting");
            Say(ForecastSentences.Options(report));
            lines.AddRange(Table(ForecastSentences.OptionHeads, report.Forecast.Options.Select(ForecastSentences.Row)));
        }

        Head("What the notes said");
        lines.AddRange(Table(
            NoteEffectWords.Heads, report.Telling.Take(MostNotes).Select(told => NoteEffectWords.Row(told, units))));
        foreach (var odd in report.Input.Noted.Odd) Say(NoteEffectWords.Odd(odd, units));
        foreach (var contradicting in report.Contradicting) Say(NoteEffectWords.Contradiction(contradicting, units));
        if (report.Input.LaterNotes is var later and > 0)
            Say($"{later} {(later == 1 ? "note is" : "notes are")} later than {ForecastSentences.Date(report.AsOf)} and {(later == 1 ? "was" : "were")} not used.");
        Head("What this rests on");
        Say(ForecastSentences.Basis(report));
        return lines;

        void Say(string sentence)
        {
            if (sentence.Length > 0) lines.AddRange(WrappedText.Lines(sentence, width));
        }

        void Head(string title) => lines.AddRange(["", title]);
    }

    private static IEnumerable<string> Chances(ForecastReport report)
    {
        const int Bar = 40;
        foreach (var (day, chance) in report.Chances)
        {
            var bar = new string('#', (int)Math.Round(Bar * chance));
            yield return $"  {day.ToString("d MMM", CultureInfo.InvariantCulture),6}  {ForecastSentences.Percent(chance),13}  {bar}".TrimEnd();
        }
    }

    private static IEnumerable<string> Table(IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows)
    {
        List<IReadOnlyList<string>> all = [heads, .. rows];
        if (all.Count == 1) return ["  nothing"];
        var widths = heads.Select((_, column) => all.Max(row => row[column].Length)).ToList();
        return all.Select(row =>
            ("  " + string.Join("  ", row.Select((cell, column) => cell.PadRight(widths[column])))).TrimEnd());
    }
}
