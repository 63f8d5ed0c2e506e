using System.Globalization;
using System.Text.RegularExpressions;
using CanopySim.Parameters;

namespace CanopySim.Files.Quantities;

/// <summary>
/// A quantity that could not be read: what was found and what is expected, for an <see cref="InputError"/>.
/// </summary>
public sealed record QuantityFault(string Found, string Expected);

/// <summary>
/// Reads quantities as people write them (<c>2.4 m</c>, <c>8 ft</c>, <c>6 ft 3 in</c>, <c>86 °F</c>, <c>30 %</c>) into
/// the unit and
/// range that a parameter names.
/// </summary>
public static partial class QuantityText
{
    // Room for the rounding of a conversion: 31.5 in may stand at a bound of 0.8001 m.
    private const double RangeTolerance = 1e-9;

    /// <summary>Value in the parameter's unit, or the fault.</summary>
    public static double? Read(string text, ParameterAttribute parameter, out QuantityFault? fault)
    {
        var value = Parse(text.Trim(), parameter, out fault);
        if (value is not double number) return null;
        var slack = RangeTolerance * Math.Max(Math.Abs(parameter.Min), Math.Abs(parameter.Max));
        if (number >= parameter.Min - slack && number <= parameter.Max + slack) return number;
        var inUnit = text.Trim() == Show(number, parameter.Unit)
            ? ""
            : $" ({Show(Math.Round(number, 6), parameter.Unit)})";
        fault = new QuantityFault($"{InputError.Quote(text)}{inUnit} is out of range", Range(parameter));
        return null;
    }

    /// <summary>A value with its unit, as it would be written in a scenario.</summary>
    public static string Show(double value, string unit)
    {
        var number = (value == 0 ? 0 : value).ToString("R", CultureInfo.InvariantCulture);
        return unit == "1" ? number : $"{number} {unit}";
    }

    /// <summary>The range of a parameter: "0.8 to 6 m".</summary>
    public static string Range(ParameterAttribute parameter) =>
        $"{Show(parameter.Min, "1")} to {Show(parameter.Max, parameter.Unit)}";

    private static double? Parse(string text, ParameterAttribute parameter, out QuantityFault? fault)
    {
        var plain = parameter.Unit == "1";
        fault = null;
        if (text.Length == 0)
        {
            fault = new QuantityFault("no value", Expectation(parameter));
            return null;
        }

        var match = NumberThenUnit().Match(text.Replace('−', '-'));
        if (!match.Success)
        {
            fault = new QuantityFault($"{InputError.Quote(text)} is not a number", Expectation(parameter));
            return null;
        }

        var number = double.Parse(match.Groups["number"].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture);
        if (!double.IsFinite(number))
        {
            fault = new QuantityFault($"{InputError.Quote(text)} is too large for a number", Expectation(parameter));
            return null;
        }

        var unitText = match.Groups["unit"].Value;
        if (unitText.StartsWith(','))
        {
            fault = new QuantityFault(
                $"{InputError.Quote(text)} has a comma in its number",
                $"{Expectation(parameter)}, with a decimal point");
            return null;
        }

        if (plain) return PlainNumber(number, unitText, text, parameter, out fault);
        if (unitText.Length == 0)
        {
            fault = new QuantityFault($"{InputError.Quote(text)} has no unit", Expectation(parameter));
            return null;
        }

        return WithUnit(number, unitText, text, parameter, out fault);
    }

    private static double? PlainNumber(
        double number, string unitText, string text, ParameterAttribute parameter, out QuantityFault? fault)
    {
        fault = null;
        if (unitText.Length == 0) return number;
        if (unitText == "%") return number / 100;
        fault = new QuantityFault($"{InputError.Quote(text)} has more than a number", Expectation(parameter));
        return null;
    }

    private static double? WithUnit(
        double number, string unitText, string text, ParameterAttribute parameter, out QuantityFault? fault)
    {
        fault = null;
        var target = Unit(parameter.Unit);
        var feet = FeetThenInches().Match(unitText);
        if (feet.Success && target.Simple == Dimension.Length)
        {
            number += double.Parse(feet.Groups["inches"].ValueSpan, CultureInfo.InvariantCulture) / 12;
            unitText = "ft";
        }

        if (UnitExpression.TryParse(unitText) is not UnitExpression unit)
        {
            fault = new QuantityFault($"{InputError.Quote(text)} has no unit that is known", Expectation(parameter));
            return null;
        }

        if (unit.Measures(target))
            return parameter.IsDifference ? unit.ConvertDifference(number, target) : unit.Convert(number, target);
        var found = unit.Simple is Dimension dimension
            ? $"{InputError.Quote(text)} is {UnitNames.Words(dimension)}"
            : $"{InputError.Quote(text)} has another kind of unit";
        fault = new QuantityFault(found, Expectation(parameter));
        return null;
    }

    private static string Expectation(ParameterAttribute parameter)
    {
        if (parameter.Unit == "1") return $"a number, {Range(parameter)}";
        var kind = Unit(parameter.Unit).Simple is Dimension dimension
            ? UnitNames.Words(dimension) + (parameter.IsDifference ? " difference" : "")
            : "a value with its unit";
        return $"{kind}, {Range(parameter)}";
    }

    private static UnitExpression Unit(string unit) =>
        UnitExpression.TryParse(unit)
            ?? throw new ArgumentException($"\"{unit}\" of a parameter is no unit that can be read");

    [GeneratedRegex(@"^(?<number>[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]{1,4})?)\s*(?<unit>.*)$")]
    private static partial Regex NumberThenUnit();

    [GeneratedRegex(@"^(?:ft|feet|foot|'|’)\s*(?<inches>[0-9]{1,2}(?:\.[0-9]+)?)\s*(?:in|inch|inches|""|”)?$", RegexOptions.IgnoreCase)]
    private static partial Regex FeetThenInches();
}
