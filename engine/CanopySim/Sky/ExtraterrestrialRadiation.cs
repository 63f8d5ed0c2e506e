using CanopySim.Numerics;

namespace CanopySim.Sky;

/// <summary>
/// Radiation on a horizontal surface above the air, and the length of the day, from latitude and day of year: Allen et al. 1998,
/// FAO Irrigation and Drainage Paper 56, Eqs. 21-34. Estimates that were fitted to these forms (<c>Weather/</c>) use them; light
/// itself uses <see cref="SolarPosition"/>.
/// </summary>
public static class ExtraterrestrialRadiation
{
    /// <summary>Solar constant of FAO-56 [MJ m⁻² min⁻¹], 1367 W m⁻².</summary>
    public const double SolarConstantPerMinute = 0.0820;

    /// <summary>Total solar irradiance at 1 AU [W m⁻²]. Kopp &amp; Lean 2011, doi:10.1029/2010GL045777, from memory.</summary>
    public const double SolarConstant = 1361;

    private const double MinutesPerDay = 1440;

    /// <summary>Direct normal irradiance above the air [W m⁻²] at a distance of the sun [AU].</summary>
    public static double Normal(double distanceAu) => SolarConstant / (distanceAu * distanceAu);

    /// <summary>Inverse squared relative distance Earth-Sun on a day of the year, Eq. 23.</summary>
    public static double InverseRelativeDistance(int dayOfYear) => 1 + 0.033 * Math.Cos(2 * Math.PI / 365 * dayOfYear);

    /// <summary>Declination [rad] on a day of the year, Eq. 24.</summary>
    public static double Declination(int dayOfYear) => 0.409 * Math.Sin(2 * Math.PI / 365 * dayOfYear - 1.39);

    /// <summary>Sunset hour angle [rad], Eq. 25; 0 in the polar night and π in the polar day.</summary>
    public static double SunsetHourAngle(double latitudeDegrees, int dayOfYear)
    {
        var latitude = UnitConversion.RadiansFromDegrees(latitudeDegrees);
        return Math.Acos(Math.Clamp(-Math.Tan(latitude) * Math.Tan(Declination(dayOfYear)), -1, 1));
    }

    /// <summary>Length of the day [h], Eq. 34.</summary>
    public static double DayLength(double latitudeDegrees, int dayOfYear) =>
        24 / Math.PI * SunsetHourAngle(latitudeDegrees, dayOfYear);

    /// <summary>
    /// Daily sum Ra [MJ m⁻² d⁻¹], Eq. 21: (24·60/π) Gsc dr (ωs sin φ sin δ + cos φ cos δ sin ωs).
    /// </summary>
    public static double Daily(double latitudeDegrees, int dayOfYear)
    {
        var sunset = SunsetHourAngle(latitudeDegrees, dayOfYear);
        return Between(latitudeDegrees, dayOfYear, -sunset, sunset);
    }

    /// <summary>
    /// Sum over a period between two hour angles [MJ m⁻²], Eq. 28, of which only the part between sunrise and sunset counts.
    /// </summary>
    public static double Between(double latitudeDegrees, int dayOfYear, double firstHourAngle, double lastHourAngle)
    {
        var sunset = SunsetHourAngle(latitudeDegrees, dayOfYear);
        var first = Math.Clamp(firstHourAngle, -sunset, sunset);
        var last = Math.Clamp(lastHourAngle, -sunset, sunset);
        var (sinLatitude, cosLatitude) = Math.SinCos(UnitConversion.RadiansFromDegrees(latitudeDegrees));
        var (sinDeclination, cosDeclination) = Math.SinCos(Declination(dayOfYear));
        return MinutesPerDay / (2 * Math.PI) * SolarConstantPerMinute * InverseRelativeDistance(dayOfYear)
            * ((last - first) * sinLatitude * sinDeclination + cosLatitude * cosDeclination * (Math.Sin(last) - Math.Sin(first)));
    }

    /// <summary>
    /// Hour angle at the middle of an hour [rad], Eqs. 31-33: standard clock time t [h], longitudes [°, east positive]
    /// of the place and of its time zone's meridian, seasonal correction for the equation of time.
    /// </summary>
    public static double HourAngle(double clockHour, double longitudeDegrees, double zoneLongitudeDegrees, int dayOfYear)
    {
        var b = 2 * Math.PI * (dayOfYear - 81) / 364;
        var seasonal = 0.1645 * Math.Sin(2 * b) - 0.1255 * Math.Cos(b) - 0.025 * Math.Sin(b);
        return Math.PI / 12 * (clockHour + (longitudeDegrees - zoneLongitudeDegrees) / 15 + seasonal - 12);
    }
}
