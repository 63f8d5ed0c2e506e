namespace CanopySim.Weather;

/// <summary>The hours of a measured day; what the day lacks stays a gap.</summary>
internal static class DailyToHourly
{
    /// <summary>
    /// 24 readings: temperature by <see cref="HourlyTemperature"/>, measured radiation by <see cref="HourlyRadiation"/>, rain
    /// evenly over the day (its hours are unknown, its sum is not), humidity and wind the same all day.
    /// </summary>
    public static HourlyReading[] Readings(
        IReadOnlyList<DailyReading> days, IReadOnlyList<SunOfDay> suns, int index, Site site, HashSet<string> estimated)
    {
        // The season's first and last day border on themselves.
        HourlyTemperature.Extremes ExtremesOf(int neighbor)
        {
            neighbor = Math.Clamp(neighbor, 0, days.Count - 1);
            var reading = days[neighbor];
            return new(reading.MinimumTemperatureCelsius, reading.MaximumTemperatureCelsius, suns[neighbor].Day);
        }

        var day = days[index];
        estimated.Add(EstimatedInput.HourlyTemperature);
        var temperatures = HourlyTemperature.OfDay(ExtremesOf(index - 1), ExtremesOf(index), ExtremesOf(index + 1));

        double[]? radiation = null;
        if (day.GlobalRadiation is { } dailySum)
        {
            estimated.Add(EstimatedInput.HourlyRadiation);
            radiation = HourlyRadiation.OfDay(dailySum, suns[index].Hours, site.Latitude);
        }

        var readings = new HourlyReading[24];
        for (var hour = 0; hour < 24; hour++)
        {
            readings[hour] = new HourlyReading(
                temperatures[hour], day.VaporPressure, radiation?[hour], null, null, day.Rain / 24, day.WindSpeed, null);
        }

        return readings;
    }
}
