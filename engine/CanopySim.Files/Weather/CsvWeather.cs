using System.Globalization;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Text;
using CanopySim.Weather;

namespace CanopySim.Files.Weather;

/// <summary>Reads a plain table of weather, by day or by hour.</summary>
internal sealed class CsvWeather
{
    private const NumberStyles NumberForm =
        NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    private static readonly WeatherQuantity[] OfDays =
    [
        WeatherQuantity.MinimumTemperature, WeatherQuantity.MaximumTemperature, WeatherQuantity.RelativeHumidity,
        WeatherQuantity.DewPoint, WeatherQuantity.GlobalRadiation, WeatherQuantity.Rain, WeatherQuantity.Wind,
    ];

    private static readonly WeatherQuantity[] OfHours =
    [
        WeatherQuantity.AirTemperature, WeatherQuantity.RelativeHumidity, WeatherQuantity.DewPoint,
            WeatherQuantity.GlobalRadiation,
        WeatherQuantity.DiffuseRadiation, WeatherQuantity.DirectNormalRadiation, WeatherQuantity.Rain,
            WeatherQuantity.Wind,
        WeatherQuantity.Pressure,
    ];

    // How tables write that nothing was measured.
    private static readonly HashSet<string> Nothing = new(StringComparer.OrdinalIgnoreCase)
    {
        "", "NA", "N/A", "NaN", "null", "-", "--", "M", "-9999", "-9999.0", "-999", "-999.0", "-999.9", "-99.9",
    };

    private readonly CsvLines _lines;
    private readonly string _path;
    private readonly WeatherOptions _options;
    private readonly double _standardOffsetHours;

    private CsvWeather(byte[] bytes, string path, WeatherOptions options, Site site)
    {
        (_lines, _path, _options) = (new CsvLines(bytes, path), path, options);
        _standardOffsetHours = SiteTime.Of(site).StandardOffsetHours();
    }

    public static RawWeather Read(byte[] bytes, string path, WeatherOptions options, Site site) =>
        new CsvWeather(bytes, path, options, site).Read();

    private RawWeather Read()
    {
        var headers = _lines.Header();
        var headerPlace = _lines.Place;
        var columns = WeatherColumns.Find(headers, _options.Columns, headerPlace);
        var date = Column(WeatherQuantity.Date) ?? Column(WeatherQuantity.Time) ?? throw Missing("date");
        var hour = date.Quantity == WeatherQuantity.Time ? null : Column(WeatherQuantity.Time);
        var rows = ReadRows(headers.Count, columns, date, hour);
        if (rows.Times.Count == 0)
            throw new InputError(
                new InputPlace(_path, _lines.Line), "no rows under the header", "a row for each day or hour");

        var isDaily = !rows.HasHours || IsOneRowADay(rows.Times);
        foreach (var needed in isDaily ? OfDays[..2] : OfHours[..1])
            if (Column(needed) is null) throw Missing(KeyNames.Snake(needed.ToString()), isDaily);
        return Convert(rows, columns, isDaily);

        WeatherColumn? Column(WeatherQuantity quantity)
        {
            foreach (var column in columns)
                if (column.Quantity == quantity) return column;
            return null;
        }

        InputError Missing(string quantity, bool? daily = null) => new(
            headerPlace,
            $"no column for {quantity}{FileKind(daily)} among {string.Join(", ", headers)}",
            "one of that name, or weather.columns in the scenario to say which it is",
            "header");
    }

    private Rows ReadRows(int width, IReadOnlyList<WeatherColumn> columns, WeatherColumn date, WeatherColumn? hour)
    {
        var measured = columns.Where(column => column.Index != date.Index && column.Index != hour?.Index).ToArray();
        var rows = new Rows(measured);
        while (_lines.NextRow() is { } cells)
        {
            var place = _lines.Place;
            if (cells.Count != width) throw new InputError(place, $"{cells.Count} cells", $"{width}, as in the header");
            var (time, hasHour) = WeatherTime.Read(
                cells[date.Index],
                hour is null ? null : cells[hour.Value.Index],
                _standardOffsetHours,
                place,
                date,
                hour);
            if (rows.Times.Count == 0) rows.HasHours = hasHour;
            else if (rows.HasHours != hasHour)
                throw new InputError(
                    place with { Column = date.Index + 1 },
                    $"a row by {(hasHour ? "hour" : "day")} among rows by {(hasHour ? "day" : "hour")}",
                    "rows of one kind",
                    date.Header);
            rows.Times.Add(time);
            rows.Lines.Add(place.Line!.Value);
            for (var i = 0; i < measured.Length; i++)
                rows.Values[i].Add(Number(cells[measured[i].Index], measured[i], place));
        }

        return rows;
    }

    private static double Number(string cell, WeatherColumn column, InputPlace place)
    {
        if (Nothing.Contains(cell)) return double.NaN;
        if (double.TryParse(cell, NumberForm, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number))
            return number;
        var comma = cell.Contains(',') ? " with a decimal point" : "";
        throw new InputError(
            place with { Column = column.Index + 1 }, InputError.Quote(cell), $"a number{comma}", column.Header);
    }

    private static string FileKind(bool? isDaily) => isDaily switch
    {
        true => " in a file by day",
        false => " in a file by hour",
        null => "",
    };

    private static bool IsOneRowADay(List<DateTime> times) =>
        times.Count > 1 && times[1] - times[0] == TimeSpan.FromDays(1);

    private RawWeather Convert(Rows rows, IReadOnlyList<WeatherColumn> columns, bool isDaily)
    {
        var raw = new RawWeather(_path, isDaily);
        var shift = !isDaily && _options.HourStamp == HourStamp.End ? -1 : 0;
        foreach (var time in rows.Times) raw.Times.Add(isDaily ? time.Date : time.AddHours(shift));
        raw.Lines.AddRange(rows.Lines);
        raw.Filled.AddRange(new bool[rows.Times.Count]);
        for (var i = 0; i < rows.Columns.Count; i++)
        {
            var column = rows.Columns[i];
            if (!(isDaily ? OfDays : OfHours).Contains(column.Quantity) || rows.Values[i].TrueForAll(double.IsNaN))
                continue;
            var unit = column.UnitName is string name
                ? WeatherUnit.Find(column.Quantity, name, isDaily)!.Value
                : WeatherUnit.Usual(column.Quantity);
            raw.Columns.Add(new RawColumn(column, rows.Values[i].ConvertAll(unit.Convert)));
            CheckRange(raw, raw.Columns[^1], rows.Values[i]);
        }

        return raw;
    }

    private static void CheckRange(RawWeather raw, RawColumn column, List<double> asWritten)
    {
        var (quantity, values) = (column.Column.Quantity, column.Values);
        var range = WeatherRange.Of(quantity, raw.IsDaily);
        for (var row = 0; row < values.Count; row++)
        {
            if (double.IsNaN(values[row])) continue;
            if (!range.Allows(values[row]))
            {
                var hint = column.Column.UnitName is null && WeatherUnit.Other(quantity, raw.IsDaily) is string other
                    ? $"; another unit is named in the header, such as {column.Column.Header} [{other}]"
                    : "";
                throw new InputError(
                    raw.PlaceOf(row, column.Column),
                    $"{asWritten[row].ToString(CultureInfo.InvariantCulture)} is impossible",
                    $"{range}{hint}",
                    column.Column.Header);
            }

            values[row] = range.Within(values[row]);
        }

        if (quantity == WeatherQuantity.RelativeHumidity && column.Column.UnitName is null
                && values.Count >= 7 && values.TrueForAll(value => !(value > 1)))
            throw new InputError(
                raw.PlaceOf(0, column.Column),
                "a humidity that never exceeds 1",
                $"percent, or {column.Column.Header} [1] in the header for fractions",
                column.Column.Header);
    }

    private sealed class Rows(IReadOnlyList<WeatherColumn> columns)
    {
        public IReadOnlyList<WeatherColumn> Columns { get; } = columns;

        public List<DateTime> Times { get; } = [];

        public List<int> Lines { get; } = [];

        public IReadOnlyList<List<double>> Values { get; } = [.. columns.Select(_ => new List<double>())];

        public bool HasHours { get; set; }
    }
}
