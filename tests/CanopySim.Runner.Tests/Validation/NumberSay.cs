using System.Globalization;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Numbers as the validation page writes them.</summary>
internal static class NumberSay
{
    /// <summary>Significant digits of every number of ours.</summary>
    public const int Digits = 3;

    /// <summary>Three significant digits, without an exponent.</summary>
    public static string Number(double value)
    {
        if (!double.IsFinite(value)) return "not a number";
        if (value == 0) return "0";
        // Rounded first: 0.9996 has the digits of 1.00.
        var rounded = double.Parse(value.ToString($"E{Digits - 1}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(rounded)));
        return rounded.ToString($"F{Math.Max(0, Digits - 1 - magnitude)}", CultureInfo.InvariantCulture);
    }

    /// <summary>A number as it was typed in: published figures and limits.</summary>
    public static string Typed(double value) => Math.Abs(value) is > 0 and < 1e-4 ? Tiny(value) : value.ToString("G6", CultureInfo.InvariantCulture);

    /// <summary>A day from its number.</summary>
    public static string Day(double dayNumber) => Day(DateOnly.FromDayNumber((int)dayNumber));

    public static string Day(DateOnly day) => day.ToString("d MMMM", CultureInfo.InvariantCulture);

    /// <summary>Whole percent, with its sign.</summary>
    public static string Percent(double share) => (100 * share).ToString("+0;-0;+0", CultureInfo.InvariantCulture) + " %";

    /// <summary>Tiny numbers that differ from machine to machine: only whether they stay under a limit.</summary>
    public static Func<double, string> Under(double limit) => value => value < limit ? $"under {Tiny(limit)}" : Tiny(value);

    private static string Tiny(double value) => value.ToString("0.#e-0", CultureInfo.InvariantCulture);
}
