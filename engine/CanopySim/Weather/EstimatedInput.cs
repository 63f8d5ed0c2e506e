namespace CanopySim.Weather;

/// <summary>
/// Names of what weather files may leave out, as <see cref="WeatherSeries.EstimatedInputs"/> lists them when estimated.
/// </summary>
public static class EstimatedInput
{
    /// <summary>No day was measured: all were made like the days of a record.</summary>
    public const string GeneratedWeather = "generated_weather";

    /// <summary>Temperatures or rain were moved, as the scenario asks.</summary>
    public const string ShiftedWeather = "shifted_weather";

    /// <summary>Hours of temperature were made from the day's extremes.</summary>
    public const string HourlyTemperature = "hourly_temperature";

    /// <summary>Global radiation was made from the temperature range.</summary>
    public const string GlobalRadiation = "global_radiation";

    /// <summary>The day's radiation was spread over its hours.</summary>
    public const string HourlyRadiation = "hourly_radiation";

    /// <summary>Global radiation was split by the clearness of the hour.</summary>
    public const string DirectAndDiffuse = "direct_and_diffuse";

    /// <summary>The dew point was taken for the day's minimum temperature.</summary>
    public const string VaporPressure = "vapor_pressure";

    /// <summary>Air pressure was made from the height above the sea.</summary>
    public const string AirPressure = "air_pressure";

    /// <summary>Wind was missing and set to a default.</summary>
    public const string Wind = "wind";

    /// <summary>Rain was missing and set to none.</summary>
    public const string Rain = "rain";

    /// <summary>All names, in the order in which results list them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        GeneratedWeather, ShiftedWeather, HourlyTemperature, GlobalRadiation, HourlyRadiation, DirectAndDiffuse, VaporPressure,
        AirPressure, Wind, Rain,
    ];
}
