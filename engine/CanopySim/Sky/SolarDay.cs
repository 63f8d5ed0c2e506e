using CanopySim.Numerics;

namespace CanopySim.Sky;

/// <summary>
/// Sunrise, noon and sunset of a day [h, local standard time; may lie outside 0 to 24 where the zone is far from the sun's].
/// Refined by the sun's motion, so good to a second.
/// </summary>
public readonly record struct SolarDay(double SunriseHour, double NoonHour, double SunsetHour)
{
    /// <summary>Altitude of the center at visible sunrise [°]: 34' of refraction, 16' of radius (common practice).</summary>
    public const double VisibleSunriseAltitude = -0.8333;

    public double DayLength => SunsetHour - SunriseHour;

    /// <summary>
    /// The day at a place. The sun rises when its center passes <paramref name="altitudeDegrees"/>: 0 for light without
    /// refraction, <see cref="VisibleSunriseAltitude"/> for the almanac's sunrise. Where it stays down all day sunrise and
    /// sunset fall on noon; where it stays up they lie 12 h from it.
    /// </summary>
    public static SolarDay At(DateOnly date, Site site, double utcOffsetHours, double altitudeDegrees = 0)
    {
        var midnight = date.ToDateTime(TimeOnly.MinValue).AddHours(-utcOffsetHours);
        var longitude = UnitConversion.RadiansFromDegrees(site.Longitude);

        (double Hour, double HourAngle) Passage(double guess, int side)
        {
            var target = 0.0;
            for (var pass = 0; pass < 4; pass++)
            {
                var sun = ApparentSun.At(midnight.AddHours(guess));
                if (side != 0) target = side * HourAngleAt(altitudeDegrees, site.Latitude, sun.Declination);
                guess += Math.IEEERemainder(target - sun.GreenwichHourAngle - longitude, 2 * Math.PI) * (12 / Math.PI);
            }

            return (guess, target);
        }

        // The first guess only picks which of the noons is this date's: the one nearest to 12:00.
        var noon = Passage(12, 0).Hour;
        var declination = ApparentSun.At(midnight.AddHours(noon)).Declination;
        var halfDay = HourAngleAt(altitudeDegrees, site.Latitude, declination) * (12 / Math.PI);
        if (halfDay is 0 or 12) return new SolarDay(noon - halfDay, noon, noon + halfDay);
        return new SolarDay(Passage(noon - halfDay, -1).Hour, noon, Passage(noon + halfDay, 1).Hour);
    }

    /// <summary>
    /// Hour angle at which the sun passes an altitude [rad], 0 if it stays below and π if above all day:
    /// cos ω = (sin h − sin φ sin δ) / (cos φ cos δ); for h = 0 FAO-56 Eq. 25.
    /// </summary>
    internal static double HourAngleAt(double altitudeDegrees, double latitudeDegrees, double declination)
    {
        var (sinLatitude, cosLatitude) = Math.SinCos(UnitConversion.RadiansFromDegrees(latitudeDegrees));
        var (sinDeclination, cosDeclination) = Math.SinCos(declination);
        var cosine = (Math.Sin(UnitConversion.RadiansFromDegrees(altitudeDegrees)) - sinLatitude * sinDeclination)
            / (cosLatitude * cosDeclination);
        return Math.Acos(Math.Clamp(cosine, -1, 1));
    }
}
