using CanopySim.Numerics;
using CanopySim.Sky;
using CanopySim.Weather;
using Xunit;
using static CanopySim.Tests.Sky.ReferenceTable;

namespace CanopySim.Tests.Weather;

public class RadiationTests
{
    // Allen et al. 1998, FAO-56, Example 15: Lyon, 45 deg 43' N, 200 m, July, 26.6 / 14.8 deg C: Rs 22.3. Example 16: Bangkok, 13
    // deg 44' N, April, 34.8 / 25.6 deg C, coast: Rs 21.9 and Rso 28.5. 22.2896 is Example 15 recomputed independently.
    [Theory]
    [InlineData(14.8, 26.6, 0.16, 45 + 43 / 60.0, 200, 196, 22.3, 0.05)]
    [InlineData(14.8, 26.6, 0.16, 45 + 43 / 60.0, 200, 196, 22.2896, 5.1e-5)]
    [InlineData(25.6, 34.8, 0.19, 13 + 44 / 60.0, 2, 105, 21.9, 0.05)]
    public void From_the_temperature_range(
        double minimum, double maximum, double factor, double latitude, double elevation, int dayOfYear, double expected, double tolerance) =>
        Assert.Equal(expected, RadiationFromTemperature.Daily(minimum, maximum, factor, latitude, elevation, dayOfYear), tolerance);

    [Fact]
    public void Is_at_most_that_of_a_clear_sky()
    {
        // FAO-56 Example 17: Rso 28.54 at Ra 38.06 and 2 m.
        Assert.Equal(28.54, RadiationFromTemperature.ClearSky(38.0577, 2), 0.005);
        var clear = RadiationFromTemperature.ClearSky(ExtraterrestrialRadiation.Daily(40, 180), 300);
        Assert.Equal(clear, RadiationFromTemperature.Daily(0, 36, 0.16, 40, 300, 180));
        Assert.Equal(0, RadiationFromTemperature.Daily(12, 12, 0.16, 40, 300, 180));
    }

    // hourly_from_daily.csv: Collares-Pereira & Rabl 1979 and Liu & Jordan 1960 recomputed independently, six decimals.
    [Fact]
    public void Shares_of_the_hours_agree_with_the_table()
    {
        foreach (var row in Read("Weather", "hourly_from_daily.csv"))
        {
            var sunset = UnitConversion.RadiansFromDegrees(Number(row[0]));
            var hourAngle = UnitConversion.RadiansFromDegrees(Number(row[1]));
            Assert.Equal(Number(row[2]), HourlyRadiation.CollaresPereiraRabl(hourAngle, sunset), 5.1e-7);
            Assert.Equal(Number(row[3]), HourlyRadiation.LiuJordan(hourAngle, sunset), 5.1e-7);
        }
    }

    [Fact]
    public void Shares_are_none_before_sunrise()
    {
        Assert.Equal(0, HourlyRadiation.LiuJordan(-1.6, Math.PI / 2));
        Assert.Equal(0, HourlyRadiation.CollaresPereiraRabl(1.6, Math.PI / 2));
        Assert.Equal(0, HourlyRadiation.LiuJordan(0, 0));
    }

    // diffuse_fraction.csv, first column: Erbs, Klein & Duffie 1982 recomputed with an open solar library, six decimals.
    [Fact]
    public void Diffuse_fraction_agrees_with_the_table()
    {
        foreach (var row in Read("Weather", "diffuse_fraction.csv"))
            Assert.Equal(Number(row[1]), DirectAndDiffuse.DiffuseFraction(Number(row[0])), 5.1e-7);
    }

    [Fact]
    public void Split_closes_and_direct_stays_below_the_clean_air_whatever_comes()
    {
        foreach (var zenith in new[] { 0, 0.5, 1.0, 1.4, 1.5, 1.56, 1.5706, 1.5707963 })
            foreach (var lit in new[] { 1, 0.3, 1e-6 })
                foreach (var global in new[] { 0, 1e-9, 0.5, 20, 300, 1100, 1e4 })
                {
                    var sun = new HourlySun(new SolarPosition(zenith, 1), lit);
                    foreach (var light in new[]
                    {
                        DirectAndDiffuse.FromGlobal(global, sun),
                        DirectAndDiffuse.FromGlobalAndDiffuse(global, 50, sun),
                        DirectAndDiffuse.FromGlobalAndDirect(global, 800, sun),
                        DirectAndDiffuse.FromDirectAndDiffuse(800, global, sun),
                    })
                    {
                        Assert.Equal(light.Global, light.DirectNormal * sun.CosZenith + light.DiffuseHorizontal, 1e-9);
                        Assert.InRange(light.DirectNormal, 0, 0.9 * 1361 * lit);
                        Assert.InRange(light.DiffuseHorizontal, 0, Math.Max(global, 50));
                    }

                    Assert.Equal(global, DirectAndDiffuse.FromGlobal(global, sun).Global);
                }
    }

    [Fact]
    public void Nothing_shines_when_the_sun_is_down()
    {
        var night = new HourlySun(new SolarPosition(1.7, 1), 0);
        Assert.Equal(default, DirectAndDiffuse.FromGlobal(12, night));
        Assert.Equal(default, DirectAndDiffuse.FromDirectAndDiffuse(3, 12, night));
    }

    // Kasten 1996 (Solar Energy 56:239-244), air mass 1: 1 / (6.6296 + 1.7513 - 0.1202 + 0.0065 - 0.00013) = 0.12096,
    // exp(-0.12096) = 0.88607. Kasten & Young 1989: the air mass is about 38 at the horizon, and 1 / cos z high up; clearsky:
    // 1.99429 at 60 deg, 10.30579 at 85 deg, computed with an open solar library.
    [Fact]
    public void Air_mass_and_clean_air()
    {
        Assert.Equal(1.99429, AirMass.KastenYoung(UnitConversion.RadiansFromDegrees(60)), 5.1e-6);
        Assert.Equal(10.30579, AirMass.KastenYoung(UnitConversion.RadiansFromDegrees(85)), 5.1e-6);
        Assert.Equal(38, AirMass.KastenYoung(Math.PI / 2), 0.5);
        Assert.Equal(AirMass.KastenYoung(Math.PI / 2), AirMass.KastenYoung(2));
        Assert.Equal(0.88607, AirMass.CleanDryTransmittance(1), 5.1e-6);
        for (var airMass = 1.0; airMass < 39; airMass += 0.1)
            Assert.True(AirMass.CleanDryTransmittance(airMass + 0.1) < AirMass.CleanDryTransmittance(airMass));
    }
}
