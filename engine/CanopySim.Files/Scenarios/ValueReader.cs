using System.Globalization;
using CanopySim.Files.Quantities;
using CanopySim.Files.Text;
using CanopySim.Parameters;

namespace CanopySim.Files.Scenarios;

/// <summary>Reads a single value of a scenario into the type of its key.</summary>
internal static class ValueReader
{
    private const int LongestText = 500;

    /// <summary>The value of a quantity in its parameter's unit, as the property's type.</summary>
    public static object Quantity(string text, ParameterAttribute parameter, Type type, InputPlace place, string key)
    {
        if (QuantityText.Read(text, parameter, out var fault) is not double value)
            throw new InputError(place, fault!.Found, fault.Expected, key);
        if (type == typeof(double)) return value;
        if (Math.Round(value) != value)
            throw new InputError(
                place,
                $"{InputError.Quote(text)} is not a whole number",
                $"a whole number, {QuantityText.Range(parameter)}",
                key);
        return Convert.ChangeType(value, type, CultureInfo.InvariantCulture);
    }

    public static object Read(ValueNode node, KeyShape shape, InputPlace place, string key)
    {
        var text = node.Text;
        return shape.Kind switch
        {
            KeyKind.Quantity => Quantity(text, shape.Parameter!, shape.ValueType, place, key),
            KeyKind.Text => Text(text, place, key),
            KeyKind.WholeNumber => WholeNumber(text, shape.ValueType, place, key),
            KeyKind.Flag => text switch
            {
                "true" => true,
                "false" => false,
                _ => throw new InputError(place, Found(text), "true or false", key),
            },
            KeyKind.Date =>
                Date(text)
                    ?? throw new InputError(
                        place,
                        text.Length == 0 ? "no value" : $"{Found(text)} is no date",
                        "a date such as 2024-04-15",
                        key),
            _ => Choice(text, shape.ValueType, place, key),
        };
    }

    /// <summary>A day as ISO 8601 writes it, or null.</summary>
    public static DateOnly? Date(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : null;

    /// <summary>A value as the scenario would write it.</summary>
    public static string Show(object? value, KeyShape shape) => value switch
    {
        null => "left out",
        string text => text,
        bool flag => flag ? "true" : "false",
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        Enum choice => KeyNames.Choice(choice),
        _ when shape.Parameter is ParameterAttribute parameter =>
            QuantityText.Show(Convert.ToDouble(value, CultureInfo.InvariantCulture), parameter.Unit),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };

    public static string Text(string text, InputPlace place, string key)
    {
        if (text.Trim().Length == 0) throw new InputError(place, "no value", "text", key);
        if (text.Length > LongestText)
            throw new InputError(place, $"text of {text.Length} letters", $"at most {LongestText}", key);
        return text;
    }

    private static object WholeNumber(string text, Type type, InputPlace place, string key)
    {
        if (type == typeof(ulong))
        {
            if (ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var large)) return large;
        }
        else if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        throw new InputError(
            place,
            $"{Found(text)} is not a whole number",
            type == typeof(ulong) ? "a whole number from 0" : "a whole number",
            key);
    }

    private static object Choice(string text, Type type, InputPlace place, string key)
    {
        var names = KeyNames.Choices(type).ToList();
        var index = names.IndexOf(text);
        if (index >= 0) return Enum.GetValues(type).GetValue(index)!;
        throw new InputError(
            place, Found(text), $"one of {string.Join(", ", names)}", key, NearestName.Among(text, names));
    }

    private static string Found(string text) => text.Length == 0 ? "no value" : InputError.Quote(text);
}
