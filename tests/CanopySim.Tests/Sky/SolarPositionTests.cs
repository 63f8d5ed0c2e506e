using System.Globalization;
using CanopySim.Numerics;
using CanopySim.Sky;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Sky;

public class SolarPositionTests
{
    // solar_astropy_reference.csv: astropy 5.2.1 (ERFA), get_sun -> AltAz, topocentric apparent, pressure 0, UT1-UTC forced to 0;
    // 403 random instants of 1990-2040. Asked for: 0.01 deg. Claimed, and measured here: 0.001 deg.
    private const double ClaimedDegrees = 0.001;

    [Fact]
    public void Lies_within_a_thousandth_of_a_degree_of_an_independent_ephemeris()
    {
        var errors = new List<double>();
        var distanceErrors = new List<double>();
        foreach (var row in Read("Sky", "solar_astropy_reference.csv"))
        {
            var utc = DateTimeOffset.Parse(row[0], CultureInfo.InvariantCulture);
            var sun = SolarPosition.At(utc, Number(row[2]), Number(row[3]), Number(row[4]));
            errors.Add(Angle(sun, Number(row[6]), Number(row[7])));
            distanceErrors.Add(Math.Abs(sun.DistanceAu - Number(row[8])));
        }

        Assert.Equal(403, errors.Count);
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"angle: mean {errors.Average():F6}, max {errors.Max():F6} deg; distance: max {distanceErrors.Max():E2} AU"));
        Assert.InRange(errors.Max(), 0, ClaimedDegrees);
        Assert.InRange(distanceErrors.Max(), 0, 1e-5);
    }

    // Reda & Andreas 2008, NREL/TP-560-34302, table A5.1: 2003-10-17 12:30:30 at UTC-7, 39.742476 N, 105.1786 W, 1830.14 m,
    // delta-T 67 s. Zenith without refraction 90 - e0 of the same table, to more digits by an open implementation of the report.
    [Fact]
    public void Agrees_with_the_worked_example_of_the_report()
    {
        var utc = new DateTimeOffset(2003, 10, 17, 12, 30, 30, TimeSpan.FromHours(-7));
        var sun = SolarPosition.At(utc, 39.742476, -105.1786, 1830.14);
        Assert.InRange(Angle(sun, 50.127954, 194.34024), 0, ClaimedDegrees);

        var apparent = ApparentSun.At(utc.UtcDateTime);
        Assert.Equal(-9.31434, UnitConversion.DegreesFromRadians(apparent.Declination), ClaimedDegrees);
        Assert.Equal(202.22741, UnitConversion.DegreesFromRadians(apparent.RightAscension), ClaimedDegrees);
        Assert.Equal(11.105900, UnitConversion.DegreesFromRadians(apparent.GreenwichHourAngle) - 105.1786, ClaimedDegrees);
        Assert.Equal(0.9965422974, apparent.DistanceAu, 1e-5);
        Assert.Equal(11.10629, UnitConversion.DegreesFromRadians(sun.HourAngle(39.742476)), ClaimedDegrees);
        Assert.Equal(-9.316179, UnitConversion.DegreesFromRadians(sun.Declination(39.742476)), ClaimedDegrees);
    }

    /// <summary>Angle [deg] between a position and one given in degrees.</summary>
    private static double Angle(SolarPosition sun, double zenithDegrees, double azimuthDegrees)
    {
        var zenith = UnitConversion.RadiansFromDegrees(zenithDegrees);
        var (x, y, z) = Vector(sun.ZenithRadians, sun.AzimuthRadians);
        var (u, v, w) = Vector(zenith, UnitConversion.RadiansFromDegrees(azimuthDegrees));
        var chord = Math.Sqrt((x - u) * (x - u) + (y - v) * (y - v) + (z - w) * (z - w));
        return UnitConversion.DegreesFromRadians(2 * Math.Asin(chord / 2));
    }

    private static (double X, double Y, double Z) Vector(double zenith, double azimuth) =>
        (Math.Sin(zenith) * Math.Sin(azimuth), Math.Sin(zenith) * Math.Cos(azimuth), Math.Cos(zenith));
}
