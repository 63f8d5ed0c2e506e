using CanopySim.Sky;

namespace CanopySim.Weather;

/// <summary>
/// What a record tells of the weather of its place, as <see cref="WeatherGenerator"/> needs it: chances of wet days and amounts
/// of rain, the year's course of temperatures, light, moisture and wind, and how their residuals hang together and last.
/// </summary>
public sealed class WeatherClimate
{
    private const int DaysOfYear = 365;

    private WeatherClimate(double latitude, RainClimate? rain, IReadOnlyList<AirQuantityClimate> air, double leastRange)
    {
        (Latitude, Rain, Air, LeastRange) = (latitude, rain, air, leastRange);
        Persistence = new ResidualPersistence(air);
    }

    internal double Latitude { get; }

    /// <summary>Null where the record has no rain; then no day is wet.</summary>
    internal RainClimate? Rain { get; }

    internal IReadOnlyList<AirQuantityClimate> Air { get; }

    internal ResidualPersistence Persistence { get; }

    /// <summary>Least difference of a day's extremes in the record [K].</summary>
    internal double LeastRange { get; }

    /// <summary>
    /// The climate of a record by days or by hours, at its site. A quantity that some day lacks is left out whole, and so will
    /// lack in all that is generated.
    /// </summary>
    /// <exception cref="SeasonInputException">The record is shorter than a year.</exception>
    public static WeatherClimate Of(WeatherRecord record, Site site)
    {
        var days = DailyRecord.Of(record);
        if (days.Count < DaysOfYear)
            throw new SeasonInputException("weather.seed", $"the weather covers {days.Count} days; expected at least a whole year, to make seasons like it");
        var rain = Column(days, day => day.Rain);
        bool IsWet(int day) => rain is not null && RainClimate.IsWet(rain[day]);
        SeasonalDay[] seasonal = [.. days.Select((_, day) =>
            SeasonalDay.Of(record.FirstDay.AddDays(day), IsWet(day), IsWet(Math.Max(day - 1, 0))))];
        double Extraterrestrial(int day) => ExtraterrestrialRadiation.Daily(site.Latitude, record.FirstDay.AddDays(day).DayOfYear);

        var air = new List<AirQuantityClimate>();
        void Add(AirQuantity quantity, double[]? values)
        {
            if (values is not null) air.Add(new AirQuantityClimate(quantity, seasonal, values));
        }

        Add(AirQuantity.Maximum, [.. days.Select(day => day.MaximumTemperatureCelsius)]);
        Add(AirQuantity.Minimum, [.. days.Select(day => day.MinimumTemperatureCelsius)]);
        Add(AirQuantity.Clearness, Column(days, day => day.GlobalRadiation)?.Select((sum, day) => sum / Extraterrestrial(day)).ToArray());
        Add(AirQuantity.Moisture, Column(days, day => day.VaporPressure / SaturationVaporPressure.At(day.MaximumTemperatureCelsius)));
        Add(AirQuantity.Wind, Column(days, day => day.WindSpeed));
        var leastRange = Math.Max(days.Min(day => day.MaximumTemperatureCelsius - day.MinimumTemperatureCelsius), 0);
        return new WeatherClimate(site.Latitude, rain is null ? null : RainClimate.Of(rain, record.FirstDay), air, leastRange);
    }

    private static double[]? Column(IReadOnlyList<DailyReading> days, Func<DailyReading, double?> quantity) =>
        days.All(day => quantity(day) is not null) ? [.. days.Select(day => quantity(day)!.Value)] : null;
}
