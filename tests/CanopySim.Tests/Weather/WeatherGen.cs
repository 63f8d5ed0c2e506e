using CanopySim.Weather;
using CsCheck;

namespace CanopySim.Tests.Weather;

/// <summary>Days of any temperatures, each a sine from its minimum before dawn to its maximum after noon.</summary>
internal static class WeatherGen
{
    /// <summary>A run of days from 1 February on, of a cold or a warm place: minima from somewhere between −10 and 15 °C to 25 °C, ranges up to 22 K.</summary>
    public static Gen<WeatherDay[]> Days(int count) =>
        Gen.Select(Gen.Double[-10, 15], Gen.Select(Gen.Double[0, 1], Gen.Double[0, 22]).Array[count]).Select((coldest, days) =>
            Of(Array.ConvertAll(days, day => (coldest + ((25 - coldest) * day.Item1), day.Item2))));

    /// <summary>Days of the given minima and ranges [°C].</summary>
    public static WeatherDay[] Of((double Minimum, double Range)[] days, double warmer = 0)
    {
        var first = new DateOnly(2025, 2, 1);
        return [.. days.Select((day, index) => new WeatherDay
        {
            Date = first.AddDays(index),
            Hours = [.. Enumerable.Range(0, 24).Select(hour => Hour(day.Minimum + warmer + (day.Range * (1 - Math.Cos(2 * Math.PI * (hour - 3) / 24)) / 2)))],
        })];
    }

    private static WeatherHour Hour(double temperature) => new(temperature, 0.8, 101, 1.5, 0, 0, 0, 0);
}
