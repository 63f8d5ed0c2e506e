using System.Globalization;
using System.Text.RegularExpressions;
using CanopySim.Files.Charts;

namespace CanopySim.Files.Quantities;

/// <summary>
/// Values of a scenario, which are held in the engine's units, in the units that a reader chose. Units of the
/// laboratory (mol, W, kPa) are the same to all and stay.
/// </summary>
public static partial class ReadersUnits
{
    private const int Digits = 3;

    // What a grower of the United States reads instead.
    private static readonly Dictionary<string, string> OfTheUs = new(StringComparer.Ordinal)
    {
        ["m"] = "ft",
        ["cm"] = "in",
        ["mm"] = "in",
        ["mm/d"] = "in/d",
        ["kg"] = "lb",
        ["degC"] = "°F",
        ["degC d"] = "°F d",
        ["1/m"] = "1/ft",
        ["cm2"] = "in2",
        ["m2"] = "ft2",
        ["g/cm"] = "oz/in",
    };

    /// <summary>
    /// A value as the scenario has it, "2.4 m" or "[30 d, 0.9]", to three digits where it is turned into another unit;
    /// words and dates as they are.
    /// </summary>
    public static string Show(string value, Units units) =>
        Quantity().Replace(value, quantity => Shown(quantity, units));

    private static string Shown(Match quantity, Units units)
    {
        var unit = quantity.Groups["unit"].Value;
        if (units != Units.Us || !OfTheUs.TryGetValue(unit, out var us))
            return $"{quantity.Groups["number"].Value} {Spelled(unit)}";
        var number = double.Parse(quantity.Groups["number"].ValueSpan, CultureInfo.InvariantCulture);
        var (from, to) = (UnitExpression.TryParse(unit)!, UnitExpression.TryParse(us)!);
        return $"{Rounded(from.Convert(number, to))} {Spelled(us)}";
    }

    private static string Rounded(double value)
    {
        if (value == 0) return "0";
        var decimals = Math.Clamp(Digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 6);
        return Math.Round(value, decimals).ToString("0.######", CultureInfo.InvariantCulture);
    }

    private static string Spelled(string unit) =>
        Square().Replace(unit.Replace("deg", "°", StringComparison.Ordinal), "²");

    [GeneratedRegex("(?<=[a-z])2")]
    private static partial Regex Square();

    // A whole value or one of a list: nothing else may stand before or behind it.
    [GeneratedRegex("(?<=^|[\\[,] ?)(?<number>[-+]?[0-9]+(?:\\.[0-9]+)?(?:E[-+]?[0-9]+)?) "
        + "(?<unit>[a-zA-Z°1][^,\\]]*)(?=$|[,\\]])")]
    private static partial Regex Quantity();
}
