using CanopySim.Assessment;
using CanopySim.Files.Notes;

namespace CanopySim.Files.Forecast;

/// <summary>Sets the noted tips of each day beside those of the vine.</summary>
public static class TipNotes
{
    /// <summary>What was noted of tips and upper internodes up to a day, one entry a day, by date.</summary>
    public static IReadOnlyList<NotedTips> Of(FieldNotes notes, DateOnly last) =>
    [
        .. notes.Notes
            .Where(note => note.Date <= last && note.Kind is NoteKind.Tip or NoteKind.UpperInternodes)
            .GroupBy(note => note.Date)
            .Select(day => new NotedTips(
                day.Key, Tips(day, TipState.GrowingFreely), Tips(day, TipState.Slowing), Tips(day, TipState.Stopped),
                Internodes(day, UpperInternodes.Even), Internodes(day, UpperInternodes.Shortening))),
    ];

    /// <summary>A reading for each noted day on which shoots of the vine stood, by date.</summary>
    public static IReadOnlyList<TipReading> Readings(FieldNotes notes, StandingVine vine)
    {
        var dates = vine.Season.Summary.Dates;
        var toppings = vine.Season.Work.Where(work => work.Action == "topping").Select(work => work.Date).ToList();
        var tips = vine.Season.Tips.ToDictionary(survey => survey.Date);
        return
        [
            .. Of(notes, vine.AsOf).Where(noted => tips.ContainsKey(noted.Date)).Select(noted => TipReading.Of(
                noted, tips[noted.Date], dates.Bloom, dates.Veraison,
                toppings.Where(date => date <= noted.Date).Select(date => (DateOnly?)date).LastOrDefault())),
        ];
    }

    private static int Tips(IEnumerable<FieldNote> notes, TipState state) => notes.Count(note => note.Tip == state);

    private static int Internodes(IEnumerable<FieldNote> notes, UpperInternodes upper) =>
        notes.Count(note => note.Upper == upper);
}
