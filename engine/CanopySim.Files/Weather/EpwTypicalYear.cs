namespace CanopySim.Files.Weather;

/// <summary>
/// A typical year puts months of several years together. Its rows are taken for one year, and where that year has a 29
/// February and the file none, the day before stands for it, marked as filled.
/// </summary>
internal static class EpwTypicalYear
{
    public static void Stamp(RawWeather raw, bool isSouthern, int? year)
    {
        if (!MixesYears(raw.Times)) return;
        var stamped = year ?? raw.Times[0].Year;
        var source = new RawWeather(raw.Path, isDaily: false);
        source.Times.AddRange(raw.Times);
        source.Lines.AddRange(raw.Lines);
        source.Columns.AddRange(raw.Columns.Select(column => column with { Values = [.. column.Values] }));
        raw.Times.Clear();
        raw.Lines.Clear();
        raw.Filled.Clear();
        foreach (var column in raw.Columns) column.Values.Clear();

        Append(raw, source, stamped);
        // South of the equator a season runs on into the next year.
        if (isSouthern) Append(raw, source, stamped + 1);
    }

    private static bool MixesYears(List<DateTime> times)
    {
        for (var row = 1; row < times.Count; row++)
            if (times[row].Year != times[row - 1].Year && !(times[row].Month == 1 && times[row - 1].Month == 12))
                return true;
        return false;
    }

    private static void Append(RawWeather raw, RawWeather source, int year)
    {
        var hasLeapDay = source.Times.Exists(IsLeapDay);
        for (var row = 0; row < source.Times.Count; row++)
        {
            var time = source.Times[row];
            if (IsLeapDay(time) && !DateTime.IsLeapYear(year)) continue;
            Add(row, new DateTime(year, time.Month, time.Day, time.Hour, 0, 0), filled: false);
            var lastOfFebruary = time is { Month: 2, Day: 28, Hour: 23 };
            if (!lastOfFebruary || hasLeapDay || !DateTime.IsLeapYear(year) || row < 23) continue;
            for (var hour = 0; hour < 24; hour++)
                Add(row - 23 + hour, new DateTime(year, 2, 29, hour, 0, 0), filled: true);
        }

        void Add(int row, DateTime time, bool filled)
        {
            raw.Times.Add(time);
            raw.Lines.Add(source.Lines[row]);
            raw.Filled.Add(filled);
            for (var i = 0; i < raw.Columns.Count; i++) raw.Columns[i].Values.Add(source.Columns[i].Values[row]);
        }
    }

    private static bool IsLeapDay(DateTime time) => time is { Month: 2, Day: 29 };
}
