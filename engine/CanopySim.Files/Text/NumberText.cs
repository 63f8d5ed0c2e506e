using System.Globalization;

namespace CanopySim.Files.Text;

/// <summary>
/// Numbers as results files write them: invariant, six significant digits, the same text for the same bits.
/// </summary>
public static class NumberText
{
    private const double LargestPlain = 1e15;

    private const double SmallestPlain = 1e-6;

    /// <summary>Six significant digits, without an exponent for ordinary sizes.</summary>
    public static string Rounded(double value, string name)
    {
        if (!double.IsFinite(value))
            throw new ArgumentOutOfRangeException(name, value, $"{name} is not a finite number");
        if (value == 0) return "0";
        var text = value.ToString("G6", CultureInfo.InvariantCulture);
        return Math.Abs(value) is >= SmallestPlain and < LargestPlain && text.Contains('E')
            ? decimal.Parse(
                text, NumberStyles.Float, CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture)
            : text;
    }

    /// <summary>Every digit that is needed to read the same number back.</summary>
    public static string Exact(double value, string name) => double.IsFinite(value)
        ? (value == 0 ? 0 : value).ToString("R", CultureInfo.InvariantCulture)
        : throw new ArgumentOutOfRangeException(name, value, $"{name} is not a finite number");

    public static string Whole(long value) => value.ToString(CultureInfo.InvariantCulture);

    public static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
