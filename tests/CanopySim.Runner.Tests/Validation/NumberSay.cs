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
        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (magnitude < Digits) return value.ToString("F" + (Digits - 1 - magnitude), CultureInfo.InvariantCulture);
        var step = Math.Pow(10, magnitude - Digits + 1);
        return (Math.Round(value / step) * step).ToString("F0", CultureInfo.InvariantCulture);
    }

    /// <summary>A day from its number.</summary>
    public static string Day(double dayNumber) => Day(DateOnly.FromDayNumber((int)dayNumber));

    public static string Day(DateOnly day) => day.ToString("d MMMM", CultureInfo.InvariantCulture);

    /// <summary>Whole percent, with its sign.</summary>
    public static string Percent(double share) => (100 * share).ToString("+0;-0;+0", CultureInfo.InvariantCulture) + " %";

    /// <summary>Tiny numbers that differ from machine to machine: only whether they stay under a limit.</summary>
    public static Func<double, string> Under(double limit) => value => value < limit
        ? "under " + limit.ToString("0e-0", CultureInfo.InvariantCulture)
        : value.ToString("0.0e-0", CultureInfo.InvariantCulture);

    public static string Join(IEnumerable<double> values) => string.Join(" / ", values.Select(Number));
}
