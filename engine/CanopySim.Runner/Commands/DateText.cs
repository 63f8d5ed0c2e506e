using System.Globalization;
using CanopySim.Files;

namespace CanopySim.Runner.Commands;

/// <summary>Days given on the command line.</summary>
public static class DateText
{
    /// <exception cref="InputError">The text is no day.</exception>
    public static DateOnly Read(string text, string option) =>
        DateOnly.TryParseExact(
            text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : throw new InputError(
                new InputPlace(option), $"{InputError.Quote(text)} is no day", "a day such as 2025-07-20");
}
