using System.Globalization;

namespace CanopySim.Files.Charts;

/// <summary>The axis along the bottom, shared by the panels of a chart: its range and its labels.</summary>
/// <param name="Min">Left end.</param>
/// <param name="Max">Right end, beyond <paramref name="Min"/>.</param>
/// <param name="Name">What it counts; null where the labels say it, as dates do.</param>
/// <param name="Ticks">Places and labels at a size of chart.</param>
public sealed record ChartAxis(
    double Min, double Max, string? Name, Func<ChartSize, IReadOnlyList<(double Place, string Label)>> Ticks)
{
    /// <summary>Room for a name of three letters and the next one [d].</summary>
    private const int FewestDaysForMonths = 45;

    private const int DaysAroundASingleDay = 3;

    public static double PlaceOf(DateOnly date) => date.DayNumber;

    /// <summary>Months by their names from one date to another.</summary>
    public static ChartAxis OfDates(DateOnly from, DateOnly to)
    {
        var days = to.DayNumber - from.DayNumber;
        if (days < FewestDaysForMonths)
        {
            var (first, last) = days > 0 ? (from, to)
                : (from.AddDays(-DaysAroundASingleDay), to.AddDays(DaysAroundASingleDay));
            var dates = days > 2 * DaysAroundASingleDay ? (DateOnly[])[from, to] : [from];
            return new ChartAxis(
                PlaceOf(first), PlaceOf(last), null, _ =>
                    [.. dates.Select(d =>
                    (PlaceOf(d), $"{DayText(d, isShort: true)}\n{d.Year.ToString(CultureInfo.InvariantCulture)}"))]);
        }

        return new ChartAxis(PlaceOf(from), PlaceOf(to), null, size => MonthTicks(from, to, size));
    }

    /// <summary>Leaf age, or another count of days.</summary>
    public static ChartAxis OfDays(double max, int step, string name) => new(
        0, max, name, size =>
        {
            var each = size.IsNarrow ? 2 * step : step;
            return [.. Enumerable.Range(0, (int)(max / each) + 1)
                .Select(i => ((double)i * each, (i * each).ToString(CultureInfo.InvariantCulture)))];
        });

    /// <summary>Hours of a day from one to another.</summary>
    public static ChartAxis OfHours(int from, int to, string name) => new(
        from, to, name, size =>
            [.. Enumerable.Range(from, to - from + 1).Where(hour => hour % (size.IsNarrow ? 4 : 2) == 0)
            .Select(hour => ((double)hour, hour.ToString(CultureInfo.InvariantCulture)))]);

    public static string DayText(DateOnly date, bool isShort) =>
        date.ToString(isShort ? "d MMM" : "d MMMM", CultureInfo.InvariantCulture);

    private static List<(double Place, string Label)> MonthTicks(DateOnly from, DateOnly to, ChartSize size)
    {
        List<(double, string)> ticks = [];
        var month = new DateOnly(from.Year, from.Month, 1);
        if (month < from) month = month.AddMonths(1);

        // A narrow chart of a whole year has room for every second name.
        var step = size.IsNarrow && to.DayNumber - from.DayNumber > 250 ? 2 : 1;
        for (; month <= to; month = month.AddMonths(step))
        {
            var name = month.ToString(size.IsNarrow ? "MMM" : "MMMM", CultureInfo.InvariantCulture);
            var opensYear = ticks.Count == 0 || month.Month <= step;
            ticks.Add((PlaceOf(month), opensYear ? $"{name}\n{month.Year.ToString(CultureInfo.InvariantCulture)}"
                : name));
        }

        return ticks;
    }
}
