using CanopySim.Water;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Weather;

/// <summary>Worked examples of Allen et al. 1998, FAO Irrigation and Drainage Paper 56.</summary>
public class AirStateTests
{
    // Example 14: 3.2 m/s at 10 m is 2.4 at 2 m (factor 0.748); Example 18: 10 km/h at 10 m is 2.078.
    [Fact]
    public void Wind_at_two_meters()
    {
        Assert.Equal(0.748, AirState.WindAtTwoMeters(1, 10), 5e-4);
        Assert.Equal(2.4, AirState.WindAtTwoMeters(3.2, 10), 0.05);
        Assert.Equal(2.078, AirState.WindAtTwoMeters(10 / 3.6, 10), 5e-4);
    }

    // Example 4: 1200 m, 87.9 kPa; Example 18: 100 m, 100.1.
    [Theory]
    [InlineData(1200, 87.9)]
    [InlineData(100, 100.1)]
    public void Pressure(double elevation, double expected) => Assert.Equal(expected, AirState.PressureAt(elevation), 0.05);

    // Example 20: Lyon, minimum 14.8, ea 1.68.
    [Fact]
    public void Vapor_pressure_of_the_minimum() => Assert.Equal(1.68, AirState.VaporPressureFromMinimum(14.8), 0.005);

    // Example 4: e0 of the wet bulb, 19.5, is 2.267, ea 1.91 with a psychrometer's 0.000662 per kPa; Example 5: e0 of 18 is 2.064, of 25
    // 3.168, ea 1.70 at 82 and 54 %.
    [Fact]
    public void Vapor_pressure_of_examples_4_and_5()
    {
        var wetBulb = SaturationVaporPressure.At(19.5);
        Assert.Equal(2.267, wetBulb, 5e-4);
        Assert.Equal(1.91, wetBulb - (0.000662 * AirState.PressureAt(1200) * (25.6 - 19.5)), 0.005);
        Assert.Equal(2.064, SaturationVaporPressure.At(18), 5e-4);
        Assert.Equal(3.168, SaturationVaporPressure.At(25), 5e-4);
        Assert.Equal(1.70, ((0.82 * SaturationVaporPressure.At(18)) + (0.54 * SaturationVaporPressure.At(25))) / 2, 0.005);
    }

    // Example 3: e0 of 24.5 is 3.075, of 15 is 1.705, their mean 2.39, e0 of 19.75 is 2.30. Table 2.4: slope at 20 deg C 0.145.
    [Fact]
    public void Saturation()
    {
        Assert.Equal(3.075, SaturationVaporPressure.At(24.5), 5e-4);
        Assert.Equal(1.705, SaturationVaporPressure.At(15), 5e-4);
        Assert.Equal(2.39, ReferenceEvapotranspiration.MeanSaturation(15, 24.5), 0.005);
        Assert.Equal(2.30, SaturationVaporPressure.At(19.75), 0.005);
        Assert.Equal(0.145, SaturationVaporPressure.SlopeAt(20), 5e-4);
        Assert.Equal(17.3, SaturationVaporPressure.DewPoint(SaturationVaporPressure.At(17.3)), 1e-9);
    }
}
