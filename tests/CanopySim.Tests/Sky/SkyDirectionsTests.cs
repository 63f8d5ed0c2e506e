using CanopySim.Numerics;
using CanopySim.Sky;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Sky;

public class SkyDirectionsTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(48)]
    [InlineData(145)]
    [InlineData(577)]
    [InlineData(2048)]
    public void Are_unit_vectors_above_the_horizon_that_close(int count)
    {
        var directions = SkyDirections.Create(count);
        Assert.Equal(count, directions.Count);
        var cosines = 0.0;
        for (var i = 0; i < count; i++)
        {
            var (x, y, z) = (directions.X(i), directions.Y(i), directions.Z(i));
            Assert.Equal(1, x * x + y * y + z * z, 1e-12);
            Assert.InRange(z, 1e-6, 1);
            Assert.Equal(z, Math.Cos(directions.Zenith(i)), 1e-12);
            Assert.Equal(x, Math.Sin(directions.Zenith(i)) * Math.Sin(directions.Azimuth(i)), 1e-12);
            Assert.Equal(y, Math.Sin(directions.Zenith(i)) * Math.Cos(directions.Azimuth(i)), 1e-12);
            Assert.InRange(directions.Azimuth(i), 0, 2 * Math.PI);
            cosines += z * directions.SolidAngle;
        }

        // Analytic: the cosine over the hemisphere is pi; even steps make it exact at any count.
        Assert.Equal(Math.PI, cosines, 1e-12 * Math.PI);
    }

    // Neighbors on a golden spiral are about a width √(2π / count) apart, nowhere less than 0.87 of it (worked out for 7 to 577).
    [Fact]
    public void Keep_apart()
    {
        var directions = SkyDirections.Create(145);
        var width = Math.Sqrt(directions.SolidAngle);
        for (var i = 0; i < 145; i++)
            for (var j = 0; j < i; j++)
            {
                var cosine = directions.X(i) * directions.X(j) + directions.Y(i) * directions.Y(j) + directions.Z(i) * directions.Z(j);
                Assert.True(Math.Acos(Math.Min(cosine, 1)) > 0.87 * width, $"{i} and {j}");
            }
    }

    // Observed order: each direction is the middle of a step of 1 / count in mu = cos z. Of 2 (1 + 2 mu) mu / 3, whose second
    // derivative is 8 / 3, the midpoint rule misses (8 / 3) / (24 count^2) = 1 / (9 count^2) and nothing more.
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(54)]
    [InlineData(145)]
    [InlineData(577)]
    [InlineData(2048)]
    public void Error_of_an_overcast_sky_falls_as_the_square_of_the_count(int count) =>
        Assert.Equal((7 / 9.0) - (1 / (9.0 * count * count)), OvercastRatio(SkyDirections.Create(count)), 1e-12);

    // Walls see the sky unevenly; a uniform sky gives half of its horizontal irradiance to a wall of any azimuth.
    [Theory]
    [InlineData(48, 0.02)]
    [InlineData(145, 0.01)]
    [InlineData(577, 0.003)]
    public void Walls_of_any_azimuth_get_half_of_a_uniform_sky(int count, double tolerance)
    {
        var directions = SkyDirections.Create(count);
        for (var facing = 0.0; facing < 2 * Math.PI; facing += 0.1)
        {
            var sum = 0.0;
            for (var i = 0; i < count; i++)
                sum += Math.Max(0, directions.X(i) * Math.Sin(facing) + directions.Y(i) * Math.Cos(facing)) * directions.SolidAngle;
            Assert.Equal(0.5, sum / Math.PI, tolerance);
        }
    }

    // tregenza145.csv: the 145 patches of Tregenza 1987, Lighting Research and Technology 19:13-14, with their solid angles and
    // cosine weights. Another division of the same sky: both must give the irradiance of the quadrature. Measured: patches within
    // 0.3 %, 145 directions 0.8 %, 2048 directions 0.05 %, a fifteenth of it by the order above.
    [Theory]
    [InlineData(0, 150, 50)]
    [InlineData(250, 280, 30)]
    [InlineData(880, 90, 40)]
    public void Agree_with_the_patches_of_another_division(double direct, double diffuse, double sunZenithDegrees)
    {
        var sun = new SolarPosition(UnitConversion.RadiansFromDegrees(sunZenithDegrees), 0.4);
        var sky = new AllWeatherSky(sun, direct, diffuse, 1361, AirMass.KastenYoung(sun.ZenithRadians));
        var patches = Read("Sky", "tregenza145.csv");
        Assert.Equal(2 * Math.PI, patches.Sum(patch => Number(patch[7])), 145 * 5e-9);
        Assert.Equal(Math.PI, patches.Sum(patch => Number(patch[8])), 145 * 5e-9);

        var byPatches = patches.Sum(patch => Number(patch[8]) * sky.RelativeRadiance(
            UnitConversion.RadiansFromDegrees(90 - Number(patch[2])), UnitConversion.RadiansFromDegrees(Number(patch[3]))));
        var exact = SkyIntegral.Horizontal(new Turned(sky, 0.4), sun.ZenithRadians);
        var byDirections = Irradiance(SkyDirections.Create(145), sky);
        Assert.Equal(1, byPatches / exact, 0.01);
        Assert.Equal(1, byDirections / exact, 0.01);
        Assert.Equal(1, Irradiance(SkyDirections.Create(2048), sky) / exact, 0.001);
    }

    [Fact]
    public void Shares_follow_the_frame()
    {
        // A sun in the south-west (225 deg) seen in a frame whose y points west (270 deg) lies 45 deg counterclockwise from y.
        var sun = new SolarPosition(1, UnitConversion.RadiansFromDegrees(225));
        var sky = new AllWeatherSky(sun, 900, 80, 1361, AirMass.KastenYoung(1));
        var directions = SkyDirections.Create(2000);
        var shares = directions.IrradianceShares(sky, UnitConversion.RadiansFromDegrees(270));
        var brightest = Array.IndexOf(shares, shares.Max());
        Assert.Equal(315, UnitConversion.DegreesFromRadians(directions.Azimuth(brightest)), 5.0);
        Assert.Equal(1, shares.Sum(), 1e-12);
    }

    private static double OvercastRatio(SkyDirections directions) => Irradiance(directions, new StandardOvercastSky()) / Math.PI;

    private static double Irradiance(SkyDirections directions, ISkyRadiance sky) => Enumerable.Range(0, directions.Count).Sum(i =>
        sky.RelativeRadiance(directions.Zenith(i), directions.Azimuth(i)) * directions.Z(i) * directions.SolidAngle);

    private sealed class Turned(ISkyRadiance sky, double turn) : ISkyRadiance
    {
        public double RelativeRadiance(double zenithRadians, double azimuthRadians) =>
            sky.RelativeRadiance(zenithRadians, azimuthRadians + turn);
    }
}
