using System.Globalization;
using CanopySim.Files.Text;

namespace CanopySim.Files.Weather;

/// <summary>
/// Reads EPW, the open hourly layout: eight header lines, then 35 columns; hour h covers h − 1 to h, local standard
/// time.
/// Columns and codes of missing values: EnergyPlus, Auxiliary Programs, "EnergyPlus Weather File (EPW) Data
/// Dictionary".
/// </summary>
internal static class EpwWeather
{
    private const int ColumnCount = 35;

    private const double LargestDegreesApart = 2;

    private const double LargestHoursApart = 1;

    private static readonly string[] HeaderLines =
    [
        "LOCATION", "DESIGN CONDITIONS", "TYPICAL/EXTREME PERIODS", "GROUND TEMPERATURES", "HOLIDAYS/DAYLIGHT SAVING",
        "COMMENTS 1", "COMMENTS 2", "DATA PERIODS",
    ];

    private static readonly (WeatherColumn Column, double MissingFrom, double Factor)[] Columns =
    [
        (new(6, "dry bulb temperature", WeatherQuantity.AirTemperature, "C"), 99.9, 1),
        (new(7, "dew point temperature", WeatherQuantity.DewPoint, "C"), 99.9, 1),
        (new(8, "relative humidity", WeatherQuantity.RelativeHumidity, "%"), 999, 1),
        (new(9, "atmospheric pressure", WeatherQuantity.Pressure, "Pa"), 999_999, 0.001),
        (new(13, "global horizontal radiation", WeatherQuantity.GlobalRadiation, "Wh/m2"), 9999, 1),
        (new(14, "direct normal radiation", WeatherQuantity.DirectNormalRadiation, "Wh/m2"), 9999, 1),
        (new(15, "diffuse horizontal radiation", WeatherQuantity.DiffuseRadiation, "Wh/m2"), 9999, 1),
        (new(21, "wind speed", WeatherQuantity.Wind, "m/s"), 999, 1),
        (new(33, "liquid precipitation depth", WeatherQuantity.Rain, "mm"), 999, 1),
    ];

    public static RawWeather Read(byte[] bytes, string path, Site site, int? year)
    {
        var lines = new CsvLines(bytes, path);
        for (var i = 0; i < HeaderLines.Length; i++)
        {
            var line = lines.NextLine()
                ?? throw new InputError(
                    new InputPlace(path, i + 1), "the end of the file", $"the header line {HeaderLines[i]}");
            if (!line.StartsWith(HeaderLines[i], StringComparison.OrdinalIgnoreCase))
                throw new InputError(lines.Place, InputError.Quote(line), $"the header line {HeaderLines[i]}");
            if (i == 0) CheckLocation(line.Split(','), lines.Place, site);
            if (i == HeaderLines.Length - 1) CheckPeriods(line.Split(','), lines.Place);
        }

        var raw = new RawWeather(path, isDaily: false);
        foreach (var (column, _, _) in Columns) raw.Columns.Add(new RawColumn(column, []));
        while (lines.NextLine() is string line)
            if (!string.IsNullOrWhiteSpace(line)) AddRow(raw, line.Split(','), lines.Place);
        if (raw.Times.Count == 0) throw new InputError(lines.Place, "no rows under the header", "a row for each hour");
        raw.Columns.RemoveAll(column => column.Values.TrueForAll(double.IsNaN));
        if (raw.Find(WeatherQuantity.AirTemperature) is null)
            throw new InputError(
                raw.PlaceOf(0, Columns[0].Column),
                "no dry bulb temperature in any row",
                "temperatures",
                Columns[0].Column.Header);
        EpwTypicalYear.Stamp(raw, site.IsSouthern, year);
        return raw;
    }

    private static void CheckLocation(string[] cells, InputPlace place, Site site)
    {
        if (cells.Length < 10)
            throw new InputError(
                place,
                $"{cells.Length} cells",
                "10: LOCATION, city, region, country, source, station, latitude, longitude, time zone, elevation");
        var hours = SiteTime.Of(site).StandardOffsetHours();
        Agree(6, "latitude", site.Latitude, LargestDegreesApart, "deg");
        Agree(7, "longitude", site.Longitude, LargestDegreesApart, "deg");
        Agree(8, "time zone", hours, LargestHoursApart, "hours");

        void Agree(int index, string what, double own, double most, string unit)
        {
            var cell = place with { Column = index + 1 };
            if (!TryNumber(cells[index], out var value))
                throw new InputError(cell, InputError.Quote(cells[index]), "a number", what);
            if (Math.Abs(value - own) > most)
            {
                throw new InputError(
                    cell,
                    FormattableString.Invariant($"{value} {unit}, where the scenario's site has {own}"),
                    FormattableString.Invariant($"the weather of the site, within {most} {unit}"),
                    what);
            }
        }
    }

    private static void CheckPeriods(string[] cells, InputPlace place)
    {
        if (cells.Length < 3 || !TryNumber(cells[2], out var perHour))
            throw new InputError(place, "no count of records per hour", "DATA PERIODS,1,1,…");
        if (perHour != 1)
            throw new InputError(place with { Column = 3 }, $"{cells[2].Trim()} records per hour", "1", "DATA PERIODS");
    }

    private static void AddRow(RawWeather raw, string[] cells, InputPlace place)
    {
        if (cells.Length != ColumnCount) throw new InputError(place, $"{cells.Length} cells", $"{ColumnCount}");
        var (year, month, day, hour) = (
            Whole(0, "year", 1850, 2200), Whole(1, "month", 1, 12), Whole(2, "day", 1, 31), Whole(3, "hour", 1, 24));
        if (day > DateTime.DaysInMonth(year, month))
            throw new InputError(
                place with { Column = 3 }, $"day {day} of {year}-{month:00}", "a day of the calendar", "day");
        raw.Times.Add(new DateTime(year, month, day).AddHours(hour - 1));
        raw.Lines.Add(place.Line!.Value);
        raw.Filled.Add(false);
        for (var i = 0; i < Columns.Length; i++) raw.Columns[i].Values.Add(Measured(Columns[i], cells, place));

        int Whole(int index, string what, int least, int most)
        {
            if (int.TryParse(cells[index].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                    && number >= least
                    && number <= most)
                return number;
            throw new InputError(
                place with { Column = index + 1 },
                InputError.Quote(cells[index]),
                $"a whole number from {least} to {most}",
                what);
        }
    }

    private static double Measured(
        (WeatherColumn Column, double MissingFrom, double Factor) known, string[] cells, InputPlace place)
    {
        var (column, missing, factor) = known;
        var cell = place with { Column = column.Index + 1 };
        if (!TryNumber(cells[column.Index], out var value))
            throw new InputError(cell, InputError.Quote(cells[column.Index]), "a number", column.Header);
        if (value >= missing) return double.NaN;
        var range = WeatherRange.Of(column.Quantity, isDaily: false);
        if (!range.Allows(value * factor))
            throw new InputError(
                cell, $"{cells[column.Index].Trim()} {column.UnitName} is impossible", range.ToString(), column.Header);
        return range.Within(value * factor);
    }

    private static bool TryNumber(string cell, out double value) =>
        double.TryParse(cell.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out value)
            && double.IsFinite(value);
}
