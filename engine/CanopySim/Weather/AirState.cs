namespace CanopySim.Weather;

/// <summary>
/// What stands for air measurements that are missing or were made at another height: Allen et al. 1998, FAO-56.
/// </summary>
public static class AirState
{
    /// <summary>Wind at 2 m where none was measured [m s⁻¹]: mean of over 2000 stations, FAO-56 ch. 3.</summary>
    public const double DefaultWindSpeed = 2;

    /// <summary>
    /// Wind at 2 m from wind at height z [m] over short grass, u2 = u 4.87 / ln(67.8 z − 5.42) [m s⁻¹]: Eq. 47.
    /// </summary>
    public static double WindAtTwoMeters(double windSpeed, double height) => windSpeed * 4.87 / Math.Log(67.8 * height - 5.42);

    /// <summary>Air pressure [kPa] at a height above the sea [m], 101.3 ((293 − 0.0065 z) / 293)^5.26: Eq. 7.</summary>
    public static double PressureAt(double elevation) => 101.3 * Math.Pow((293 - 0.0065 * elevation) / 293, 5.26);

    /// <summary>
    /// Vapor pressure [kPa] of a day whose air cooled to its dew point, e°(Tmin): Eq. 48. Too moist for dry places, where
    /// FAO-56 takes 2 to 3 °C off the minimum.
    /// </summary>
    public static double VaporPressureFromMinimum(double minimumCelsius) => SaturationVaporPressure.At(minimumCelsius);
}
