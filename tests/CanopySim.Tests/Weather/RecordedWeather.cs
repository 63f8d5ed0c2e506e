using System.Globalization;
using CanopySim.Weather;

namespace CanopySim.Tests.Weather;

/// <summary>Records that weather is generated like: an invented year, and four measured years without radiation and humidity.</summary>
internal static class RecordedWeather
{
    public static Site InventedSite { get; } = new() { Latitude = 38.4, Longitude = -122.3, Elevation = 60 };

    public static Site MeasuredSite { get; } = new() { Latitude = 47.6, Longitude = -122.3, Elevation = 60 };

    /// <summary>2025 of the first-season scenario: date, tmin °C, tmax °C, rain mm, solar MJ/m2, rh %, wind m/s.</summary>
    public static WeatherRecord Invented { get; } = Read("Seasons/weather.csv", cells => new DailyReading(
        cells[0],
        cells[1],
        cells[4] / 100 * (SaturationVaporPressure.At(cells[0]) + SaturationVaporPressure.At(cells[1])) / 2,
        cells[3],
        cells[2],
        cells[5]));

    /// <summary>
    /// 2012 to 2015 of the open-weather scenario: date, precipitation, temp_max, temp_min, wind, weather. Observations of the US
    /// National Oceanic and Atmospheric Administration, public domain; scenarios/open-weather/README.md says by what way.
    /// </summary>
    public static WeatherRecord Measured { get; } = Read(
        "Weather/open-weather.csv", cells => new DailyReading(cells[2], cells[1], null, null, cells[0], cells[3]));

    private static WeatherRecord Read(string name, Func<double[], DailyReading> reading)
    {
        var rows = File.ReadLines(Path.Combine(AppContext.BaseDirectory, name)).Skip(1).Select(line => line.Split(',')).ToList();
        return new WeatherRecord
        {
            FirstDay = DateOnly.Parse(rows[0][0], CultureInfo.InvariantCulture),
            Days = [.. rows.Select(row => reading([.. row.Skip(1).Select(
                cell => double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : double.NaN)]))],
        };
    }
}
