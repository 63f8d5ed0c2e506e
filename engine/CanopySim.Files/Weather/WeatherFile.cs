using System.Globalization;
using CanopySim.Files.Text;
using CanopySim.Weather;

namespace CanopySim.Files.Weather;

/// <summary>Reads weather files: plain tables by day or by hour, and EPW.</summary>
public static class WeatherFile
{
    private const int LargestFile = 200_000_000;

    // A dew point above the air is a fault; this much may be the two sensors' disagreement.
    private const double DewPointSlackCelsius = 2;

    /// <summary>Reads a weather file whole, without estimating anything.</summary>
    /// <param name="path">The file; <c>.epw</c> or a first line that opens with LOCATION is EPW, anything else a
    /// table.</param>
    /// <param name="options">How the scenario says that it is read.</param>
    /// <param name="site">Where the block lies: its zone, and for EPW what the file's own site must agree with.</param>
    /// <param name="year">Year that a typical year, made of months of several years, is taken for.</param>
    /// <exception cref="InputError">Anything in it is wrong; the first thing is told.</exception>
    public static WeatherRecord Read(string path, WeatherOptions options, Site site, int? year = null)
    {
        var bytes = StrictText.ReadBytes(path, new InputPlace(path), LargestFile, "weather");
        var isEpw = HasEpwName(path) || bytes.AsSpan().StartsWith(EpwStart);
        var raw = isEpw ? EpwWeather.Read(bytes, path, site, year) : CsvWeather.Read(bytes, path, options, site);
        CheckExtremes(raw);
        WeatherGaps.Close(raw, options.FillGaps);
        return raw.IsDaily ? Daily(raw) : Hourly(raw);
    }

    /// <summary>True where a file is read for one year at a time, as months of a typical year are.</summary>
    public static bool IsForOneYear(string path)
    {
        if (HasEpwName(path)) return true;
        Span<byte> start = stackalloc byte[EpwStart.Length];
        using var stream = File.OpenRead(path);
        return stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false) == start.Length
            && start.SequenceEqual(EpwStart);
    }

    private static ReadOnlySpan<byte> EpwStart => "LOCATION,"u8;

    private static bool HasEpwName(string path) =>
        Path.GetExtension(path).Equals(".epw", StringComparison.OrdinalIgnoreCase);

    private static void CheckExtremes(RawWeather raw)
    {
        var highest = raw.Columns.Find(
            column => column.Column.Quantity is WeatherQuantity.MaximumTemperature or WeatherQuantity.AirTemperature)!;
        foreach (var column in raw.Columns)
        {
            var slack = column.Column.Quantity switch
            {
                WeatherQuantity.MinimumTemperature => 0,
                WeatherQuantity.DewPoint => DewPointSlackCelsius,
                _ => double.PositiveInfinity,
            };
            for (var row = 0; row < column.Values.Count; row++)
            {
                // Comparisons with an empty cell are false.
                if (!(column.Values[row] > highest.Values[row] + slack)) continue;
                var (low, high) = (Text(column.Values[row]), Text(highest.Values[row]));
                throw new InputError(
                    raw.PlaceOf(row, column.Column),
                    $"{low} °C, above {highest.Column.Header} {high} °C",
                    "a value not above it",
                    column.Column.Header);
            }
        }
    }

    private static WeatherRecord Daily(RawWeather raw)
    {
        var (minimum, maximum) = (
            raw.Find(WeatherQuantity.MinimumTemperature)!, raw.Find(WeatherQuantity.MaximumTemperature)!);
        var (humidity, dewPoint) = (raw.Find(WeatherQuantity.RelativeHumidity), raw.Find(WeatherQuantity.DewPoint));
        var (radiation, rain, wind) = (
            raw.Find(WeatherQuantity.GlobalRadiation), raw.Find(WeatherQuantity.Rain), raw.Find(WeatherQuantity.Wind));
        var days = new DailyReading[raw.Times.Count];
        for (var day = 0; day < days.Length; day++)
        {
            // A filled extreme may pass a measured one; the day then has a single temperature.
            var (low, high) = (Math.Min(minimum[day], maximum[day]), Math.Max(minimum[day], maximum[day]));
            // Vapor pressure from a day's mean relative humidity: FAO-56 Eq. 19.
            var saturated = (SaturationVaporPressure.At(low) + SaturationVaporPressure.At(high)) / 2;
            days[day] = new DailyReading(
                low,
                high,
                VaporPressure(dewPoint, humidity, day, high, saturated),
                radiation?[day],
                rain?[day],
                wind?[day]);
        }

        return new WeatherRecord
        {
            Days = days,
            FirstDay = DateOnly.FromDateTime(raw.Times[0]),
            FilledGaps = raw.Filled.Count(filled => filled),
        };
    }

    private static WeatherRecord Hourly(RawWeather raw)
    {
        var first = raw.Times.FindIndex(time => time.Hour == 0);
        var count = first < 0 ? 0 : (raw.Times.Count - first) / 24 * 24;
        if (count == 0)
            throw new InputError(
                raw.PlaceOf(0), $"{raw.Times.Count} hours", "at least one whole day from 0:00, local standard time");
        var temperature = raw.Find(WeatherQuantity.AirTemperature)!;
        var (humidity, dewPoint) = (raw.Find(WeatherQuantity.RelativeHumidity), raw.Find(WeatherQuantity.DewPoint));
        var (global, diffuse, direct) = (
            raw.Find(WeatherQuantity.GlobalRadiation),
            raw.Find(WeatherQuantity.DiffuseRadiation),
            raw.Find(WeatherQuantity.DirectNormalRadiation));
        var (rain, wind, pressure) = (
            raw.Find(WeatherQuantity.Rain), raw.Find(WeatherQuantity.Wind), raw.Find(WeatherQuantity.Pressure));
        var hours = new HourlyReading[count];
        for (var hour = 0; hour < count; hour++)
        {
            var row = first + hour;
            var vapor = VaporPressure(
                dewPoint, humidity, row, temperature[row], SaturationVaporPressure.At(temperature[row]));
            hours[hour] = new HourlyReading(
                temperature[row],
                vapor,
                global?[row],
                diffuse?[row],
                direct?[row],
                rain?[row],
                wind?[row],
                pressure?[row]);
        }

        return new WeatherRecord
        {
            Hours = hours,
            FirstDay = DateOnly.FromDateTime(raw.Times[first]),
            FilledGaps = raw.Filled.Skip(first).Take(count).Count(filled => filled),
        };
    }

    // Dew point before relative humidity: it varies less in a day. Air never holds more than at saturation.
    private static double? VaporPressure(
        List<double>? dewPoint, List<double>? humidity, int row, double highest, double saturated)
    {
        if (dewPoint is not null) return SaturationVaporPressure.At(Math.Min(dewPoint[row], highest));
        return humidity is null ? null : humidity[row] / 100 * saturated;
    }

    private static string Text(double value) => Math.Round(value, 2).ToString(CultureInfo.InvariantCulture);
}
