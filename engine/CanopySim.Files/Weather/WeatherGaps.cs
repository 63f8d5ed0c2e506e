namespace CanopySim.Files.Weather;

/// <summary>
/// Finds rows that are missing, repeated or out of order and cells that are empty; fills what may be filled, and marks
/// it.
/// </summary>
internal static class WeatherGaps
{
    public const int LongestGapDays = 10;

    // Over a few hours the weather runs on in a line; over more of them the course of the day matters.
    private const int LongestLineHours = 3;

    public static void Close(RawWeather raw, bool fill)
    {
        CheckOrder(raw, fill);
        if (fill) InsertMissingRows(raw);
        foreach (var column in raw.Columns) CloseCells(raw, column, fill);
    }

    private static void CheckOrder(RawWeather raw, bool fill)
    {
        for (var row = 1; row < raw.Times.Count; row++)
        {
            var (before, time) = (raw.Times[row - 1], raw.Times[row]);
            var unit = raw.IsDaily ? "day" : "hour";
            if (time == before)
                throw new InputError(
                    raw.PlaceOf(row), $"the {unit} {raw.Show(time)} a second time", $"each {unit} once{Standard(raw)}");
            if (time < before)
                throw new InputError(
                    raw.PlaceOf(row), $"{raw.Show(time)} after {raw.Show(before)}", $"{unit}s in order{Standard(raw)}");
            if (time == before + raw.Step) continue;
            var missing = (long)Math.Round((time - before) / raw.Step) - 1;
            if (!fill)
                throw new InputError(
                    raw.PlaceOf(row),
                    $"{missing} {unit}{(missing == 1 ? "" : "s")} missing before {raw.Show(time)}",
                    $"no gap{Standard(raw)}, or fill_gaps: true in the scenario's weather");
            if (missing > LongestGapDays * raw.RowsPerDay)
                throw new InputError(
                    raw.PlaceOf(row),
                    $"{missing} {unit}s missing before {raw.Show(time)}",
                    $"gaps of at most {LongestGapDays} days");
        }
    }

    private static string Standard(RawWeather raw) => raw.IsDaily
        ? ""
        : " (hours are local standard time, without daylight saving)";

    private static void InsertMissingRows(RawWeather raw)
    {
        var count = (int)Math.Round((raw.Times[^1] - raw.Times[0]) / raw.Step) + 1;
        if (count == raw.Times.Count) return;
        var (start, times, lines) = (raw.Times[0], raw.Times.ToList(), raw.Lines.ToList());
        var rowOf = times.ConvertAll(time => (int)Math.Round((time - start) / raw.Step));
        raw.Times.Clear();
        raw.Lines.Clear();
        raw.Filled.Clear();
        for (int row = 0, read = 0; row < count; row++)
        {
            if (read + 1 < rowOf.Count && rowOf[read + 1] <= row) read++;
            raw.Times.Add(start + (row * raw.Step));
            raw.Lines.Add(lines[read]);
            raw.Filled.Add(rowOf[read] != row);
        }

        foreach (var column in raw.Columns)
        {
            var spread = new double[count];
            Array.Fill(spread, double.NaN);
            for (var read = 0; read < rowOf.Count; read++) spread[rowOf[read]] = column.Values[read];
            column.Values.Clear();
            column.Values.AddRange(spread);
        }
    }

    private static void CloseCells(RawWeather raw, RawColumn column, bool fill)
    {
        var measured = column.Values.ToArray();
        for (var row = 0; row < measured.Length; row++)
        {
            if (!double.IsNaN(measured[row])) continue;
            var end = row;
            while (end < measured.Length && double.IsNaN(measured[end])) end++;
            if (!fill)
                throw new InputError(
                    raw.PlaceOf(row, column.Column),
                    "no value",
                    "a number, or fill_gaps: true in the scenario's weather",
                    column.Column.Header);
            if (end - row > LongestGapDays * raw.RowsPerDay)
                throw new InputError(
                    raw.PlaceOf(row, column.Column),
                    $"{end - row} rows without a value from {raw.Show(raw.Times[row])}",
                    $"gaps of at most {LongestGapDays} days",
                    column.Column.Header);
            for (var gap = row; gap < end; gap++)
            {
                column.Values[gap] = Filled(raw, column.Column, measured, gap, row, end);
                raw.Filled[gap] = true;
            }

            row = end;
        }
    }

    private static double Filled(RawWeather raw, WeatherColumn column, double[] measured, int row, int start, int end)
    {
        if (column.Quantity == WeatherQuantity.Rain) return 0;
        var inLine = raw.IsDaily || (end - start <= LongestLineHours && !WeatherRange.IsRadiation(column.Quantity));
        var (before, after) = inLine ? (start - 1, end) : SameHour(measured, row, raw.RowsPerDay);
        var (hasBefore, hasAfter) = (before >= 0, after < measured.Length);
        if (hasBefore && hasAfter)
            return measured[before] + ((measured[after] - measured[before]) * (row - before) / (after - before));
        if (hasBefore) return measured[before];
        if (hasAfter) return measured[after];
        throw new InputError(
            raw.PlaceOf(row, column), "a gap with nothing around it", "readings before or after a gap", column.Header);
    }

    // The nearest days before and after on which the same hour was measured.
    private static (int Before, int After) SameHour(double[] measured, int row, int step)
    {
        var (before, after) = (row - step, row + step);
        while (before >= 0 && double.IsNaN(measured[before])) before -= step;
        while (after < measured.Length && double.IsNaN(measured[after])) after += step;
        return (before, after);
    }
}
