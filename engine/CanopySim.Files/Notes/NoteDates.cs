using System.Globalization;
using System.Text.RegularExpressions;

namespace CanopySim.Files.Notes;

/// <summary>
/// Reads dates as people write them: 2025-05-12, 12.5.2025, 12 May 2025, May 12 2025, and 5/12/2025, where the whole
/// file must say which of the two is the month: one number over 12 decides it for all, and without one such a date is an
/// error.
/// </summary>
internal sealed partial class NoteDates
{
    private readonly bool? _isMonthFirst;

    private NoteDates(bool? isMonthFirst) => _isMonthFirst = isMonthFirst;

    /// <summary>Looks through all dates of a file for what their slashes mean.</summary>
    /// <exception cref="InputError">Some have the month first, others the day.</exception>
    public static NoteDates Of(IEnumerable<(string Text, InputPlace Place)> dates)
    {
        bool? monthFirst = null;
        foreach (var (text, place) in dates)
        {
            if (Slashes().Match(text.Trim()) is not { Success: true } match) continue;
            var (first, second) = (Number(match, "first"), Number(match, "second"));
            if (first > 12 == second > 12) continue;
            if (monthFirst is { } before && before != second > 12)
            {
                throw new InputError(
                    place,
                    $"{InputError.Quote(text)}, where another date of the file has the {(before ? "month" : "day")} first",
                    "dates of one kind, best as 2025-05-12",
                    "date");
            }

            monthFirst = second > 12;
        }

        return new NoteDates(monthFirst);
    }

    /// <exception cref="InputError">The text is no day, or could be two.</exception>
    public DateOnly Read(string text, InputPlace place)
    {
        var trimmed = text.Trim();
        if (Slashes().Match(trimmed) is { Success: true } match)
        {
            var (first, second) = (Number(match, "first"), Number(match, "second"));
            if (_isMonthFirst is null && first != second && first <= 12 && second <= 12)
            {
                throw new InputError(
                    place,
                    $"{InputError.Quote(text)} could be {Day(first, second)} or {Day(second, first)}",
                    "a date such as 2025-05-12 or 12 May 2025",
                    "date");
            }

            var (month, day) = _isMonthFirst ?? true ? (first, second) : (second, first);
            if (Made(Number(match, "year"), month, day) is { } made) return made;
        }
        else if (Dots().Match(trimmed) is { Success: true } dots
            && Made(Number(dots, "year"), Number(dots, "month"), Number(dots, "day")) is { } made)
        {
            return made;
        }
        else if (DateOnly.TryParseExact(
            Spaces().Replace(trimmed.Replace(',', ' ').Replace('.', ' '), " "),
            ["yyyy-MM-dd", "yyyy-M-d", "d MMM yyyy", "d MMMM yyyy", "MMM d yyyy", "MMMM d yyyy", "yyyy MM dd"],
            CultureInfo.InvariantCulture, DateTimeStyles.None, out var read))
        {
            return read;
        }

        throw new InputError(place, $"{InputError.Quote(text)} is no day", "a date such as 2025-05-12 or 12 May 2025", "date");
    }

    private static DateOnly? Made(int year, int month, int day) =>
        year is >= 1900 and <= 2199 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month)
            ? new DateOnly(year, month, day)
            : null;

    private static string Day(int month, int day) =>
        $"{day} {CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month)}";

    private static int Number(Match match, string group) =>
        int.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<first>[0-9]{1,2})/(?<second>[0-9]{1,2})/(?<year>[0-9]{4})$")]
    private static partial Regex Slashes();

    [GeneratedRegex(@"^(?<day>[0-9]{1,2})\.\s?(?<month>[0-9]{1,2})\.\s?(?<year>[0-9]{4})$")]
    private static partial Regex Dots();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
