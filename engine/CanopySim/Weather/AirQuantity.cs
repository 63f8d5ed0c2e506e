namespace CanopySim.Weather;

/// <summary>What of a day's air and light has residuals in the generator. Its number addresses its randomness.</summary>
internal enum AirQuantity
{
    /// <summary>Maximum temperature [°C].</summary>
    Maximum,

    /// <summary>Minimum temperature [°C].</summary>
    Minimum,

    /// <summary>Global radiation over extraterrestrial, so that the sun's own year is not left to harmonics.</summary>
    Clearness,

    /// <summary>Vapor pressure over saturation at the day's maximum, which lies between 0 and 1.</summary>
    Moisture,

    /// <summary>Wind speed [m s⁻¹].</summary>
    Wind,
}
