using CanopySim.Files.Notes;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Weather;

namespace CanopySim.Files.Forecast;

/// <summary>What a forecast rests on, read and checked: the block, its notes, and weather of which nothing is later than the day.</summary>
public sealed record ForecastInput
{
    // The weather may go on for so long after the last note and still end on the day itself [d]. Assumed.
    private const int LongestSilence = 21;

    public required ScenarioDocument Document { get; init; }

    /// <summary>The block with the noted work and water.</summary>
    public required Scenario Scenario { get; init; }

    public required FieldNotes Notes { get; init; }

    /// <summary>What the notes say of the vines.</summary>
    public required NotedVines Noted { get; init; }

    /// <summary>The day from which it looks ahead.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>Weather of the season to the day, and after it the outlook.</summary>
    public required WeatherSeries Known { get; init; }

    /// <summary>The site's record to the day, of which the weather ahead is made.</summary>
    public required WeatherRecord Record { get; init; }

    public required double UtcOffsetHours { get; init; }

    /// <summary>Notes that are later than the day and were not used.</summary>
    public int LaterNotes => Notes.Notes.Count(note => note.Date > AsOf);

    /// <summary>True where the outlook reaches beyond the day.</summary>
    public bool HasOutlook => Known.Days[^1].Date > AsOf;

    /// <summary>Last day of the season.</summary>
    public DateOnly LastDay => SeasonCalendar.Of(Scenario, Known).LastDay;

    /// <summary>Reads what a forecast rests on.</summary>
    /// <param name="scenarioPath">The scenario file.</param>
    /// <param name="overrides">Keys with other values.</param>
    /// <param name="notesPath">The field notes.</param>
    /// <param name="asOf">The day; null for the last one of the weather, or of the notes where the weather goes on.</param>
    /// <param name="outlookPath">Weather that is expected after the day; null for none.</param>
    /// <exception cref="InputError">A file is wrong, or they do not go together.</exception>
    /// <exception cref="SeasonInputException">The weather does not cover the season's beginning.</exception>
    public static ForecastInput Read(
        string scenarioPath, IReadOnlyList<string> overrides, string notesPath, DateOnly? asOf, string? outlookPath)
    {
        var document = ScenarioFile.Read(scenarioPath, overrides);
        var notes = NotesFile.Read(notesPath);
        var record = SeasonWeather.Read(document);
        var offset = SiteTime.Of(document.Scenario.Site).StandardOffsetHours(record.FirstDay.Year);
        var recordEnds = record.FirstDay.AddDays(record.DayCount - 1);
        var calendar = SeasonCalendar.Of(document.Scenario, record.FirstDay, recordEnds);
        var day = asOf ?? DayOf(notes, recordEnds, calendar, notesPath);
        if (day < calendar.HeatFrom || day > calendar.LastDay || day > recordEnds)
        {
            throw new InputError(
                new InputPlace("--as-of"), $"{day:yyyy-MM-dd}",
                $"a day of the season that the weather covers, {calendar.HeatFrom:yyyy-MM-dd} to "
                + $"{(recordEnds < calendar.LastDay ? recordEnds : calendar.LastDay):yyyy-MM-dd}");
        }

        foreach (var note in notes.Notes)
        {
            if (note.Date >= calendar.HeatFrom && note.Date <= calendar.LastDay) continue;
            throw new InputError(
                note.Place, $"{note.Date:yyyy-MM-dd}",
                $"a day of the season {calendar.HeatFrom:yyyy-MM-dd} to {calendar.LastDay:yyyy-MM-dd}; another season is another "
                + "file, and season.year of the scenario says which", "date");
        }

        var upToDay = Part(record, record.FirstDay, day);
        const int DaysOfYear = 365;
        if (upToDay.DayCount < DaysOfYear)
        {
            throw new InputError(
                new InputPlace(document.WeatherPath), $"{upToDay.DayCount} days of weather up to {day:yyyy-MM-dd}",
                "a whole year or more, several are better: what comes is made like the days of the record");
        }

        var from = calendar.HeatFrom < record.FirstDay ? record.FirstDay : calendar.HeatFrom;
        var scenario = document.Scenario with
        {
            Season = document.Scenario.Season with { Year = calendar.Year },
        };
        var known = WeatherBuilder.Complete(Part(record, from, day), scenario.Weather, scenario.Site, offset);
        if (outlookPath is not null)
            known = With(known, Outlook(outlookPath, scenario, day), scenario, offset);
        return new ForecastInput
        {
            Document = document,
            Scenario = NotedWork.Into(scenario, notes, day),
            Notes = notes,
            Noted = NoteObservations.Of(notes, day),
            AsOf = day,
            Known = known,
            Record = upToDay,
            UtcOffsetHours = offset,
        };
    }

    private static DateOnly DayOf(FieldNotes notes, DateOnly recordEnds, SeasonCalendar calendar, string path)
    {
        var last = notes.Notes.Count > 0
            ? notes.Notes.Max(note => note.Date)
            : throw new InputError(new InputPlace(path), "no notes", "at least one note, or the day with --as-of");
        var weatherEnds = recordEnds < calendar.LastDay ? recordEnds : calendar.LastDay;
        return weatherEnds >= last && weatherEnds.DayNumber - last.DayNumber <= LongestSilence ? weatherEnds : last;
    }

    private static WeatherRecord Outlook(string path, Scenario scenario, DateOnly day)
    {
        // An outlook has headers of its own, and gaps in it are no measurements that failed.
        var options = new WeatherOptions { File = path, RadiationFromTemperature = scenario.Weather.RadiationFromTemperature };
        var outlook = WeatherFile.Read(path, options, scenario.Site, day.Year);
        var (first, last) = (outlook.FirstDay, outlook.FirstDay.AddDays(outlook.DayCount - 1));
        var next = day.AddDays(1);
        if (first > next || last < next)
        {
            throw new InputError(
                new InputPlace(path), $"days from {first:yyyy-MM-dd} to {last:yyyy-MM-dd}",
                $"an outlook that holds {next:yyyy-MM-dd}, the day after the forecast's, and goes on from there");
        }

        return Part(outlook, next, last);
    }

    private static WeatherSeries With(WeatherSeries known, WeatherRecord outlook, Scenario scenario, double offset)
    {
        var ahead = WeatherBuilder.Complete(outlook, scenario.Weather, scenario.Site, offset);
        return known with
        {
            Days = [.. known.Days, .. ahead.Days],
            EstimatedInputs = [.. EstimatedInput.All.Where(name =>
                known.EstimatedInputs.Contains(name) || ahead.EstimatedInputs.Contains(name))],
        };
    }

    private static WeatherRecord Part(WeatherRecord record, DateOnly from, DateOnly to)
    {
        var (skip, take) = (from.DayNumber - record.FirstDay.DayNumber, to.DayNumber - from.DayNumber + 1);
        return record with
        {
            FirstDay = from,
            Days = [.. record.Days.Skip(skip).Take(take)],
            Hours = [.. record.Hours.Skip(24 * skip).Take(24 * take)],
        };
    }
}
