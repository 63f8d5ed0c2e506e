namespace CanopySim.Weather;

/// <summary>
/// Saturation vapor pressure over water, e°(T) = 0.6108 exp(17.27 T / (T + 237.3)) [kPa, T in °C]: Allen et al. 1998, FAO-56
/// Eq. 11; within 0.3 % of Buck 1981 from 0 to 50 °C.
/// </summary>
public static class SaturationVaporPressure
{
    /// <summary>Saturation vapor pressure [kPa] at a temperature [°C].</summary>
    public static double At(double temperatureCelsius) => 0.6108 * Math.Exp(17.27 * temperatureCelsius / (temperatureCelsius + 237.3));

    /// <summary>Its slope [kPa K⁻¹] at a temperature [°C]: FAO-56 Eq. 13.</summary>
    public static double SlopeAt(double temperatureCelsius)
    {
        var denominator = temperatureCelsius + 237.3;
        return 4098 * At(temperatureCelsius) / (denominator * denominator);
    }

    /// <summary>Dew point [°C] of air with a vapor pressure [kPa]: the inverse of <see cref="At"/>.</summary>
    public static double DewPoint(double vaporPressure)
    {
        var log = Math.Log(vaporPressure / 0.6108);
        return 237.3 * log / (17.27 - log);
    }
}
