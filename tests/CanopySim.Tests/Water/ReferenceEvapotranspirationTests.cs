using CanopySim.Sky;
using CanopySim.Weather;
using Xunit;
using static CanopySim.Water.ReferenceEvapotranspiration;

namespace CanopySim.Tests.Water;

/// <summary>
/// Worked examples of Allen et al. 1998, FAO Irrigation and Drainage Paper 56, as printed (half a unit of the last digit), and
/// where more digits are given, recomputed independently from its equations.
/// </summary>
public class ReferenceEvapotranspirationTests
{
    // Example 17: Bangkok, 13 deg 44' N, 2 m, April; 34.8 / 25.6 deg C, ea 2.85, 2 m/s, 8.5 h of sun; month before 1 deg cooler.
    [Fact]
    public void Example_17_a_month_in_the_tropics()
    {
        const double Minimum = 25.6;
        const double Maximum = 34.8;
        const double Vapor = 2.85;
        var latitude = 13 + (44 / 60.0);
        var above = ExtraterrestrialRadiation.Daily(latitude, 105);
        var length = ExtraterrestrialRadiation.DayLength(latitude, 105);
        var global = FromSunshine(above, 8.5, length);
        var clear = RadiationFromTemperature.ClearSky(above, 2);
        var pressure = AirState.PressureAt(2);
        Digits(38.06, 38.0577, above);
        Digits(12.31, 12.3126, length);
        Digits(22.65, 22.6510, global);
        Digits(28.54, 28.5448, clear);
        Digits(0.246, 0.245800, SaturationVaporPressure.SlopeAt((Minimum + Maximum) / 2));

        // Printed 0.0674, because the book goes on with P rounded to 101.3.
        Assert.Equal(0.0674, PsychrometricConstant(101.3), 5e-5);
        Assert.Equal(0.0673488, PsychrometricConstant(pressure), 5.1e-8);
        Digits(4.42, 4.42180, MeanSaturation(Minimum, Maximum));
        var longwave = DailyNetLongwave(Minimum, Maximum, Vapor, global / clear);
        var net = NetShortwave(global) - longwave;
        Digits(17.44, 17.4413, NetShortwave(global));
        Digits(3.11, 3.1086, longwave);
        Digits(14.33, 14.3327, net);

        // Eq. 44: G = 0.14 (30.2 − 29.2).
        var evapotranspiration = Daily(Minimum, Maximum, Vapor, net, 0.14 * (30.2 - 29.2), 2, pressure);
        Digits(5.72, 5.71612, evapotranspiration);
    }

    // Example 18: Uccle, 50 deg 48' N, 100 m, 6 July; 21.5 / 12.3 deg C, 84 / 63 %, 10 km/h at 10 m, 9.25 h of sun.
    [Fact]
    public void Example_18_a_day_in_a_mild_climate()
    {
        const double Minimum = 12.3;
        const double Maximum = 21.5;
        var above = ExtraterrestrialRadiation.Daily(50.8, 187);
        var length = ExtraterrestrialRadiation.DayLength(50.8, 187);
        var global = FromSunshine(above, 9.25, length);
        var clear = RadiationFromTemperature.ClearSky(above, 100);
        var pressure = AirState.PressureAt(100);
        var vapor = ((0.84 * SaturationVaporPressure.At(Minimum)) + (0.63 * SaturationVaporPressure.At(Maximum))) / 2;
        var wind = AirState.WindAtTwoMeters(10 / 3.6, 10);
        Digits(41.09, 41.08838, above);
        Digits(16.1, 16.10461, length);
        Digits(22.07, 22.07205, global);
        Digits(30.90, 30.89846, clear);
        Digits(2.078, 2.077642, wind);
        Digits(100.1, 100.1235, pressure);
        Digits(1.409, 1.408624, vapor);
        Digits(1.997, 1.997486, MeanSaturation(Minimum, Maximum));
        Digits(0.122, 0.122113, SaturationVaporPressure.SlopeAt((Minimum + Maximum) / 2));
        Digits(0.0666, 0.0665821, PsychrometricConstant(pressure));
        var longwave = DailyNetLongwave(Minimum, Maximum, vapor, global / clear);
        var net = NetShortwave(global) - longwave;
        Digits(17.00, 16.99548, NetShortwave(global));
        Digits(3.71, 3.71229, longwave);
        Digits(13.28, 13.28319, net);
        Digits(3.88, 3.880259, Daily(Minimum, Maximum, vapor, net, 0, wind, pressure));
    }

    // Example 19: N'Diaye, 16 deg 13' N, 16 deg 15' W, 8 m, 1 October, zone meridian 15 W; 02-03 h: 28 deg C, 90 %, 1.9 m/s.
    // The clearness of the night is that before sunset, 0.8.
    [Fact]
    public void Example_19_an_hour_of_the_night()
    {
        Assert.Equal(0.220, SaturationVaporPressure.SlopeAt(28), 5e-4);
        Assert.Equal(3.780, SaturationVaporPressure.At(28), 5e-4);
        var vapor = 0.90 * SaturationVaporPressure.At(28);
        Assert.Equal(3.402, vapor, 5e-4);
        var longwave = HourlyNetLongwave(28, vapor, 0.8);
        Assert.Equal(0.100, longwave, 5e-4);
        Assert.Equal(-0.050, HourlySoilHeatFlux(-longwave, isDay: false), 5e-4);
        Assert.Equal(0.00, Hourly(28, vapor, -longwave, isDay: false, 1.9, AirState.PressureAt(8)), 0.005);
    }

    // The same, 14-15 h: 38 deg C, 52 %, 3.3 m/s, Rs 2.450 MJ m-2.
    [Fact]
    public void Example_19_an_hour_of_the_day()
    {
        var latitude = 16 + (13 / 60.0);
        Assert.Equal(1.0001, ExtraterrestrialRadiation.InverseRelativeDistance(274), 5e-5);
        Assert.Equal(-0.0753, ExtraterrestrialRadiation.Declination(274), 5e-5);
        var middle = ExtraterrestrialRadiation.HourAngle(14.5, -16.25, -15, 274);
        Assert.Equal(0.5512, middle - (Math.PI / 24), 5e-5);
        Assert.Equal(0.8130, middle + (Math.PI / 24), 5e-5);
        var above = ExtraterrestrialRadiation.Between(latitude, 274, middle - (Math.PI / 24), middle + (Math.PI / 24));
        var clear = RadiationFromTemperature.ClearSky(above, 8);
        Assert.Equal(3.543, above, 5e-4);
        Assert.Equal(2.658, clear, 5e-4);
        Assert.Equal(0.922, 2.450 / clear, 5e-4);
        Assert.Equal(0.358, SaturationVaporPressure.SlopeAt(38), 5e-4);
        Assert.Equal(6.625, SaturationVaporPressure.At(38), 5e-4);
        var vapor = 0.52 * SaturationVaporPressure.At(38);
        Assert.Equal(3.445, vapor, 5e-4);
        Assert.Equal(1.887, NetShortwave(2.450), 5.1e-4);
        var longwave = HourlyNetLongwave(38, vapor, 2.450 / clear);
        Assert.Equal(0.137, longwave, 5e-4);
        var net = NetShortwave(2.450) - longwave;
        Assert.Equal(1.749, net, 5e-4);
        Assert.Equal(0.175, HourlySoilHeatFlux(net, isDay: true), 5e-4);
        Assert.Equal(0.63, Hourly(38, vapor, net, isDay: true, 3.3, AirState.PressureAt(8)), 0.005);
    }

    // Example 11 and 12: Rio de Janeiro, 22 deg 54' S, May, 220 h of sun, 25.1 / 19.1 deg C, ea 2.1: Rso 18.8, Rnl 3.5, Rns 11.1, Rn 7.6.
    // Example 16: Bangkok, coast, 34.8 / 25.6, ea 2.85: Rns 16.9, Rnl 3.0, Rn 13.9.
    [Fact]
    public void Net_radiation_of_examples_11_12_and_16()
    {
        var above = ExtraterrestrialRadiation.Daily(-22.9, 135);
        var global = FromSunshine(above, 220 / 31.0, ExtraterrestrialRadiation.DayLength(-22.9, 135));
        var clear = RadiationFromTemperature.ClearSky(above, 0);
        Assert.Equal(14.5, global, 0.05);
        Assert.Equal(18.8, clear, 0.05);
        var longwave = DailyNetLongwave(19.1, 25.1, 2.1, global / clear);
        Assert.Equal(3.5, longwave, 0.05);
        Assert.Equal(11.1, NetShortwave(global), 0.05);
        Assert.Equal(7.6, NetShortwave(global) - longwave, 0.05);

        var coast = 13 + (44 / 60.0);
        global = RadiationFromTemperature.Daily(25.6, 34.8, 0.19, coast, 2, 105);
        clear = RadiationFromTemperature.ClearSky(ExtraterrestrialRadiation.Daily(coast, 105), 2);
        longwave = DailyNetLongwave(25.6, 34.8, 2.85, global / clear);
        Assert.Equal(16.9, NetShortwave(global), 0.05);
        Assert.Equal(3.0, longwave, 0.05);
        Assert.Equal(13.9, NetShortwave(global) - longwave, 0.05);
    }

    // Example 20: Lyon, 45 deg 43' N, 200 m, July, 26.6 / 14.8 deg C alone: through the weather's own estimates. The wind is 2 m/s, the
    // vapor pressure that of the minimum. Printed 4.56 and, for 1 and 3 m/s, 4.2 and 4.8.
    [Theory]
    [InlineData(1, 4.2, 0.05)]
    [InlineData(2, 4.5604, 5.1e-5)]
    [InlineData(3, 4.8, 0.05)]
    public void Example_20_from_temperatures_alone(double wind, double expected, double tolerance)
    {
        const double Minimum = 14.8;
        const double Maximum = 26.6;
        var latitude = 45 + (43 / 60.0);
        var global = RadiationFromTemperature.Daily(Minimum, Maximum, 0.16, latitude, 200, 196);
        var clear = RadiationFromTemperature.ClearSky(ExtraterrestrialRadiation.Daily(latitude, 196), 200);
        var vapor = AirState.VaporPressureFromMinimum(Minimum);
        var longwave = DailyNetLongwave(Minimum, Maximum, vapor, global / clear);
        Digits(22.29, 22.2896, global);
        Digits(30.58, 30.5783, clear);
        Digits(17.16, 17.1630, NetShortwave(global));
        Digits(3.68, 3.6798, longwave);
        Assert.Equal(expected, Daily(Minimum, Maximum, vapor, NetShortwave(global) - longwave, 0, wind, AirState.PressureAt(200)), tolerance);
    }

    // Example 18 once more, as a day of weather: two readings that hold the extremes, everything else even. What it adds to the
    // formulas is which mean of the hours goes where.
    [Fact]
    public void A_day_of_weather_gives_what_its_means_give()
    {
        var hours = new WeatherHour[24];
        for (var hour = 0; hour < 24; hour++)
        {
            var temperature = hour == 5 ? 12.3 : hour == 14 ? 21.5 : 17.0;
            var (vapor, wind, light) = (1.408624 + (hour % 2 == 0 ? 0.1 : -0.1), 2.077642 + (hour < 12 ? 1 : -1), hour is > 7 and <= 19 ? 22.07205e6 / 12 / 3600 : 0);
            hours[hour] = new WeatherHour(temperature, vapor, 100.1235, wind, 0, light, 0, light);
        }

        var day = new WeatherDay { Date = new DateOnly(2023, 7, 6), Hours = hours };
        Assert.Equal(3.880259, OfDay(day, new Site { Latitude = 50.8, Longitude = 4.35, Elevation = 100 }), 5e-5);
    }

    // A made-up overcast winter day: Rs/Rso of 0.05 counts as 0.3, lest the sky warm the grass.
    [Fact]
    public void Under_the_thickest_cloud_longwave_still_goes_out() =>
        Assert.Equal(DailyNetLongwave(2, 6, 0.7, 0.3), DailyNetLongwave(2, 6, 0.7, 0.05));

    // Angstrom's formula, FAO-56 Eq. 35 with 0.25 and 0.50.
    private static double FromSunshine(double above, double sunshine, double length) => (0.25 + (0.5 * sunshine / length)) * above;

    // The recomputed value within half a unit of its last digit, the printed one within half of its own.
    private static void Digits(double printed, double recomputed, double actual)
    {
        Assert.Equal(printed, actual, HalfUnit(printed));
        Assert.Equal(recomputed, actual, HalfUnit(recomputed));

        static double HalfUnit(double value)
        {
            var text = value.ToString(System.Globalization.CultureInfo.InvariantCulture);
            var point = text.IndexOf('.');
            return 0.51 * Math.Pow(10, point < 0 ? 0 : point + 1 - text.Length);
        }
    }
}
