namespace CanopySim.Weather;

/// <summary>A day of weather, complete, with its 24 hours in local standard time.</summary>
public sealed record WeatherDay
{
    public required DateOnly Date { get; init; }

    /// <summary>The hours; hour h covers h:00 to h+1:00 local standard time.</summary>
    public required IReadOnlyList<WeatherHour> Hours { get; init; }

    public double MinimumTemperatureCelsius => Hours.Min(hour => hour.AirTemperatureCelsius);

    public double MaximumTemperatureCelsius => Hours.Max(hour => hour.AirTemperatureCelsius);

    public double MeanTemperatureCelsius => Hours.Average(hour => hour.AirTemperatureCelsius);

    /// <summary>Rain of the day [mm].</summary>
    public double Rain => Hours.Sum(hour => hour.Rain);
}

/// <summary>
/// An hour of weather. Temperature [°C], vapor pressure [kPa], air pressure [kPa], wind at 2 m [m s⁻¹], rain [mm],
/// irradiances [W m⁻²] with global = direct normal × cos zenith + diffuse.
/// </summary>
public readonly record struct WeatherHour(
    double AirTemperatureCelsius,
    double VaporPressure,
    double AirPressure,
    double WindSpeed,
    double Rain,
    double GlobalHorizontalIrradiance,
    double DirectNormalIrradiance,
    double DiffuseHorizontalIrradiance);
