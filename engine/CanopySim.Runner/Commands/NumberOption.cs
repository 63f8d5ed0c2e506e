using System.Globalization;
using CanopySim.Files;

namespace CanopySim.Runner.Commands;

/// <summary>Numbers given on the command line, read here so that a message names the option.</summary>
public static class NumberOption
{
    /// <summary>The number, or null where the option was not given.</summary>
    /// <exception cref="InputError">The text is no number, or out of range.</exception>
    public static double? Read(string? text, string option, double min, double max)
    {
        if (text is null) return null;
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= min
            && value <= max
            ? value
            : throw new InputError(
                new InputPlace(option), InputError.Quote(text),
                FormattableString.Invariant($"a number from {min} to {max}"));
    }

    /// <summary>The whole number, or null where the option was not given.</summary>
    /// <exception cref="InputError">The text is no whole number, or out of range.</exception>
    public static int? Whole(string? text, string option, int min, int max)
    {
        if (text is null) return null;
        return int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && value >= min && value <= max
            ? value
            : throw new InputError(
                new InputPlace(option), InputError.Quote(text),
                FormattableString.Invariant($"a whole number from {min} to {max}"));
    }
}
