using System.Globalization;
using System.Text.RegularExpressions;

namespace CanopySim.Files.Weather;

/// <summary>
/// Reads the day or the hour of a row. Times are local standard time; one with an offset of its own is brought there.
/// </summary>
internal static partial class WeatherTime
{
    private const string DateExpected = "a date as year-month-day, such as 2024-04-15";

    /// <summary>The time of a row, and whether it names an hour.</summary>
    public static (DateTime Time, bool HasHour) Read(
        string dateText, string? hourText, double standardOffsetHours, InputPlace place, WeatherColumn date,
            WeatherColumn? hour)
    {
        var datePlace = place with { Column = date.Index + 1 };
        var match = DateAndTime().Match(dateText);
        if (!match.Success) throw new InputError(datePlace, Found(dateText), DateExpected, date.Header);
        var (year, month, day) = (Number(match, "year"), Number(match, "month"), Number(match, "day"));
        if (year is < 1850 or > 2200 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month))
            throw new InputError(
                datePlace, $"{InputError.Quote(dateText)} is no day of the calendar", DateExpected, date.Header);
        var time = new DateTime(year, month, day);
        if (match.Groups["hour"].Success)
        {
            if (hour is not null)
                throw new InputError(
                    datePlace,
                    $"{InputError.Quote(dateText)} beside a column for the hour",
                    "a date alone",
                    date.Header);
            time = time.AddHours(
                WholeHour(
                    Number(match, "hour"),
                    Number(match, "minute"),
                    Number(match, "second"),
                    dateText,
                    datePlace,
                    date.Header));
            return (
                match.Groups["offset"] is { Success: true } offset
                    ? time.AddHours(standardOffsetHours - OffsetHours(offset.Value, dateText, datePlace, date.Header))
                    : time,
                true);
        }

        if (hourText is null || hour is not WeatherColumn column) return (time, false);
        var hourPlace = place with { Column = column.Index + 1 };
        var clock = Clock().Match(hourText);
        if (!clock.Success)
            throw new InputError(hourPlace, Found(hourText), "an hour such as 7 or 07:00", column.Header);
        return (
            time.AddHours(
                WholeHour(
                    Number(clock, "hour"),
                    Number(clock, "minute"),
                    Number(clock, "second"),
                    hourText,
                    hourPlace,
                    column.Header)),
            true);
    }

    private static int WholeHour(int hour, int minute, int second, string text, InputPlace place, string header)
    {
        if (minute != 0 || second != 0)
            throw new InputError(
                place, $"{InputError.Quote(text)} within an hour", "whole hours, one row each", header);
        return hour <= 24 ? hour : throw new InputError(place, InputError.Quote(text), "an hour from 0 to 24", header);
    }

    private static double OffsetHours(string offset, string text, InputPlace place, string header)
    {
        if (offset == "Z") return 0;
        var digits = offset[1..].Replace(":", "", StringComparison.Ordinal);
        var hours = int.Parse(digits[..2], CultureInfo.InvariantCulture) + (
            digits.Length > 2 ? int.Parse(digits[2..], CultureInfo.InvariantCulture) / 60.0 : 0);
        if (hours > 14) throw new InputError(place, InputError.Quote(text), "an offset of at most 14 hours", header);
        return offset[0] == '-' ? -hours : hours;
    }

    private static int Number(Match match, string group) =>
        match.Groups[group] is { Success: true } found ? int.Parse(found.ValueSpan, CultureInfo.InvariantCulture) : 0;

    private static string Found(string text) => text.Length == 0 ? "an empty cell" : InputError.Quote(text);

    [GeneratedRegex(@"^(?<year>[0-9]{4})(?<mark>[-/.]?)(?<month>[0-9]{1,2})\k<mark>(?<day>[0-9]{1,2})(?:[T ]+(?<hour>[0-9]{1,2}):(?<minute>[0-9]{2})(?::(?<second>[0-9]{2})(?:\.0+)?)?(?<offset>Z|[+-][0-9]{2}(?::?[0-9]{2})?)?)?$")]
    private static partial Regex DateAndTime();

    [GeneratedRegex(@"^(?<hour>[0-9]{1,2})(?:\.0+|:(?<minute>[0-9]{2})(?::(?<second>[0-9]{2}))?)?$")]
    private static partial Regex Clock();
}
