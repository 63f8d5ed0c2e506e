namespace CanopySim.Weather;

/// <summary>A record by days, whatever it was measured by.</summary>
internal static class DailyRecord
{
    /// <summary>
    /// The days of a record; of hours their extremes, means of humidity and wind, sums of radiation [MJ m⁻² d⁻¹] and rain. A
    /// quantity that one hour of a day lacks, the day lacks.
    /// </summary>
    public static IReadOnlyList<DailyReading> Of(WeatherRecord record) =>
        record.Days.Count > 0 ? record.Days : [.. record.Hours.Chunk(24).Where(hours => hours.Length == 24).Select(OfHours)];

    private static DailyReading OfHours(HourlyReading[] hours)
    {
        const double MegajoulesPerWattHour = 3600e-6;
        double? Sum(Func<HourlyReading, double?> quantity) =>
            hours.All(hour => quantity(hour) is not null) ? hours.Sum(hour => quantity(hour)!.Value) : null;
        return new DailyReading(
            hours.Min(hour => hour.AirTemperatureCelsius),
            hours.Max(hour => hour.AirTemperatureCelsius),
            Sum(hour => hour.VaporPressure) / 24,
            Sum(hour => hour.GlobalHorizontalIrradiance) * MegajoulesPerWattHour,
            Sum(hour => hour.Rain),
            Sum(hour => hour.WindSpeed) / 24);
    }
}
