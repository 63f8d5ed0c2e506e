using CanopySim.Files.Scenarios;
using CanopySim.Files.Text;

namespace CanopySim.Files.Weather;

/// <summary>
/// Decides which column of a table holds what: by the scenario's <c>columns</c> where it says so, else by the header.
/// </summary>
internal static class WeatherColumns
{
    private static readonly WeatherQuantity[] Mappable =
        [.. Enum.GetValues<WeatherQuantity>().Where(quantity => quantity is not WeatherQuantity.Unused)];

    public static IReadOnlyList<WeatherColumn> Find(
        IReadOnlyList<string> headers, IReadOnlyDictionary<string, string> mapping, InputPlace place)
    {
        var columns = mapping.Select(pair => Mapped(pair.Key, pair.Value, headers, place)).ToList();
        for (var i = 0; i < headers.Count; i++)
        {
            if (columns.Any(column => column.Index == i)) continue;
            if (WeatherHeader.Recognise(headers[i], i, place) is not WeatherColumn column)
            {
                if (WeatherHeader.Misspelt(headers[i]) is string nearest)
                    throw new InputError(
                        place with { Column = i + 1 },
                        "an unknown header",
                        "a known one, or weather.columns in the scenario to say what it holds",
                        headers[i],
                        nearest);
                continue;
            }

            if (column.Quantity == WeatherQuantity.Unused) continue;
            var other = columns.FindIndex(found => found.Quantity == column.Quantity);
            if (other < 0)
            {
                columns.Add(column);
            }
            else if (!mapping.ContainsKey(KeyNames.Snake(column.Quantity.ToString())))
            {
                throw new InputError(
                    place with { Column = i + 1 },
                    $"{KeyNames.Snake(column.Quantity.ToString())} a second time, after column "
                        + $"{columns[other].Index + 1} ({columns[other].Header})",
                    "one column for it, or weather.columns in the scenario to say which",
                    headers[i]);
            }
        }

        foreach (var column in columns)
        {
            if (column.UnitName is not string unit || column.Quantity is WeatherQuantity.Date or WeatherQuantity.Time)
                continue;
            if (!WeatherHeader.IsUnit(column.Quantity, unit))
                throw new InputError(
                    place with { Column = column.Index + 1 },
                    $"the unit {InputError.Quote(unit)}",
                    $"one of {WeatherUnit.Names(column.Quantity)}",
                    column.Header);
        }

        return columns;
    }

    // "quantity: header [unit]"; a header that itself ends in a bracket is found first.
    private static WeatherColumn Mapped(string name, string text, IReadOnlyList<string> headers, InputPlace place)
    {
        var key = $"weather.columns.{name}";
        var names = Mappable.Select(quantity => KeyNames.Snake(quantity.ToString())).ToList();
        var at = names.IndexOf(name);
        if (at < 0)
            throw new InputError(
                place,
                $"unknown quantity {InputError.Quote(name)}",
                $"one of {string.Join(", ", names)}",
                key,
                NearestName.Among(name, names));
        var index = IndexOf(text.Trim());
        if (index >= 0)
            return new WeatherColumn(
                index,
                headers[index],
                Mappable[at],
                WeatherHeader.Recognise(headers[index], index, place)?.UnitName
                    ?? WeatherHeader.SplitUnit(headers[index]).Unit);
        var (header, unit) = WeatherHeader.SplitUnit(text);
        index = IndexOf(header);
        if (index < 0)
            throw new InputError(
                place,
                $"no column {InputError.Quote(header)}",
                $"one of {string.Join(", ", headers)}",
                key,
                NearestName.Among(header, headers));
        return new WeatherColumn(index, headers[index], Mappable[at], unit);

        int IndexOf(string wanted) =>
            headers.ToList().FindIndex(found => found.Equals(wanted, StringComparison.OrdinalIgnoreCase));
    }
}
