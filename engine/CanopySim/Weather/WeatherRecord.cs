namespace CanopySim.Weather;

/// <summary>What a weather file said, in the engine's units, before anything is estimated: daily or hourly, with gaps as null.</summary>
public sealed record WeatherRecord
{
    /// <summary>Days in order, none missing (a reader fills or refuses gaps); empty when the file is hourly.</summary>
    public IReadOnlyList<DailyReading> Days { get; init; } = [];

    /// <summary>Hours in order from 0:00 local standard time of the first whole day, 24 a day; empty when the file is daily.</summary>
    public IReadOnlyList<HourlyReading> Hours { get; init; } = [];

    /// <summary>Day of the first reading.</summary>
    public required DateOnly FirstDay { get; init; }

    /// <summary>Readings that the reader filled because the scenario allows it.</summary>
    public int FilledGaps { get; init; }

    /// <summary>Made by <see cref="WeatherGenerator"/>, never measured.</summary>
    public bool IsGenerated { get; init; }

    /// <summary>Warmed, cooled or given more or less rain than it had, by <see cref="WeatherShift"/>.</summary>
    public bool IsShifted { get; init; }

    public int DayCount => Days.Count > 0 ? Days.Count : Hours.Count / 24;
}

/// <summary>A day as measured. Temperatures [°C], humidity [kPa], radiation [MJ m⁻² d⁻¹], rain [mm], wind [m s⁻¹].</summary>
public readonly record struct DailyReading(
    double MinimumTemperatureCelsius,
    double MaximumTemperatureCelsius,
    double? VaporPressure,
    double? GlobalRadiation,
    double? Rain,
    double? WindSpeed);

/// <summary>An hour as measured. Temperature [°C], vapor pressure [kPa], irradiances [W m⁻²], rain [mm], wind [m s⁻¹], pressure [kPa].</summary>
public readonly record struct HourlyReading(
    double AirTemperatureCelsius,
    double? VaporPressure,
    double? GlobalHorizontalIrradiance,
    double? DiffuseHorizontalIrradiance,
    double? DirectNormalIrradiance,
    double? Rain,
    double? WindSpeed,
    double? AirPressure);
