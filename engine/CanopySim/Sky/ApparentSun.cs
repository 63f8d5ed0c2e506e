using CanopySim.Numerics;

namespace CanopySim.Sky;

/// <summary>
/// The sun seen from the Earth's center, apparent (nutation and aberration applied), with the hour angle at Greenwich.
/// After Meeus 1998, Astronomical Algorithms, ch. 12, 22 and 25 (higher accuracy) on the truncated <see cref="EarthSeries"/>.
/// </summary>
/// <param name="Declination">Apparent declination [rad].</param>
/// <param name="RightAscension">Apparent right ascension [rad], 0 to 2π.</param>
/// <param name="GreenwichHourAngle">Hour angle at Greenwich, westward [rad], −π to π.</param>
/// <param name="DistanceAu">Distance [AU].</param>
public readonly record struct ApparentSun(
    double Declination, double RightAscension, double GreenwichHourAngle, double DistanceAu)
{
    private const double RadiansPerArcsecond = Math.PI / 648000;

    private static readonly DateTime J2000 = new(2000, 1, 1, 12, 0, 0, DateTimeKind.Unspecified);

    /// <summary>Place of the sun at a moment of universal time (UTC; see <see cref="DeltaT"/>).</summary>
    public static ApparentSun At(DateTime utc)
    {
        var universalDays = (utc - J2000).Ticks / (double)TimeSpan.TicksPerDay;
        var terrestrialDays = universalDays + DeltaT.Seconds(2000 + universalDays / 365.25) / 86400;
        var centuries = terrestrialDays / 36525;
        var tau = centuries / 10;

        // Seen from the Earth; the last term goes from the series' frame to FK5 (Meeus Eq. 25.9, in latitude under 0.06").
        var distance = EarthSeries.DistanceAt(tau);
        var longitude = EarthSeries.LongitudeAt(tau) + Math.PI - 0.09033 * RadiansPerArcsecond;
        var latitude = -EarthSeries.LatitudeAt(tau);

        var (nutation, obliquity) = NutationAndObliquity(centuries);
        longitude += nutation - 20.4898 * RadiansPerArcsecond / distance;

        var (sinLongitude, cosLongitude) = Math.SinCos(longitude);
        var (sinLatitude, cosLatitude) = Math.SinCos(latitude);
        var (sinObliquity, cosObliquity) = Math.SinCos(obliquity);
        var x = cosLatitude * cosLongitude;
        var y = cosLatitude * sinLongitude * cosObliquity - sinLatitude * sinObliquity;
        var z = cosLatitude * sinLongitude * sinObliquity + sinLatitude * cosObliquity;
        var rightAscension = Math.Atan2(y, x);

        var siderealTime = MeanSiderealTime(universalDays) + nutation * cosObliquity;
        return new ApparentSun(
            Math.Atan2(z, Math.Sqrt(x * x + y * y)),
            rightAscension < 0 ? rightAscension + 2 * Math.PI : rightAscension,
            Math.IEEERemainder(siderealTime - rightAscension, 2 * Math.PI),
            distance);
    }

    /// <summary>
    /// Nutation in longitude and true obliquity [rad]: Meeus ch. 22, the short form (good to 0.5" and 0.1") and Eq. 22.2;
    /// Julian centuries from J2000.
    /// </summary>
    private static (double Nutation, double Obliquity) NutationAndObliquity(double centuries)
    {
        var node = UnitConversion.RadiansFromDegrees(125.04452 - 1934.136261 * centuries);
        var sun = UnitConversion.RadiansFromDegrees(280.4665 + 36000.7698 * centuries);
        var moon = UnitConversion.RadiansFromDegrees(218.3165 + 481267.8813 * centuries);
        var nutation = -17.20 * Math.Sin(node) - 1.32 * Math.Sin(2 * sun) - 0.23 * Math.Sin(2 * moon) + 0.21 * Math.Sin(2 * node);
        var inObliquity = 9.20 * Math.Cos(node) + 0.57 * Math.Cos(2 * sun) + 0.10 * Math.Cos(2 * moon) - 0.09 * Math.Cos(2 * node);
        var mean = 84381.448 + centuries * (-46.8150 + centuries * (-0.00059 + centuries * 0.001813));
        return (nutation * RadiansPerArcsecond, (mean + inObliquity) * RadiansPerArcsecond);
    }

    /// <summary>Mean sidereal time at Greenwich [rad]: Meeus Eq. 12.4, days of universal time from J2000.</summary>
    private static double MeanSiderealTime(double days)
    {
        var centuries = days / 36525;
        return UnitConversion.RadiansFromDegrees(
            280.46061837 + 360.98564736629 * days + centuries * centuries * (0.000387933 - centuries / 38710000));
    }
}
