using CanopySim.Phenology;
using Xunit;

namespace CanopySim.Tests.Phenology;

public class DegreeDaysTests
{
    // By hand from the formulas of Sevacherian et al. 1977 and Baskerville & Emin 1969, e.g. 6/22 above 10: M = 14, W = 8, theta
    // = asin(-0.5), (4 x 2.0944 + 8 x 0.8660) / pi = 4.872. Three decimals.
    [Theory]
    [InlineData(6, 22, 10, null, 4.000, 4.500, 4.872)]
    [InlineData(4, 16, 10, null, 0.000, 1.500, 1.910)]
    [InlineData(8, 18, 10, null, 3.000, 3.200, 3.388)]
    [InlineData(12, 30, 10, null, 11.000, 11.000, 11.000)]
    [InlineData(18, 38, 10, 35.0, 18.000, 17.775, 17.499)]
    public void Worked_examples(
        double minimum, double maximum, double lower, double? upper, double average, double triangle, double sine)
    {
        // The average of the last example was printed without the cutoff, which a mean of 28 does not reach anyway.
        Assert.Equal(average, DegreeDays.Average(minimum, maximum, lower, upper), 5.1e-4);
        Assert.Equal(triangle, DegreeDays.SingleTriangle(minimum, maximum, lower, upper), 5.1e-4);
        Assert.Equal(sine, DegreeDays.SingleSine(minimum, maximum, lower, upper), 5.1e-4);
    }

    // Published answers in the documentation of a general ecological temperature toolkit citing Allen 1976, Environ Entomol
    // 5:388-396.
    [Fact]
    public void Outside_check()
    {
        Assert.Equal(0.47, DegreeDays.SingleSine(7, 14, 12), 0.005);
        Assert.Equal(0.29, DegreeDays.SingleTriangle(7, 14, 12), 0.005);

        // By hand: M = 10.5, W = 3.5, theta = asin(1.5 / 3.5) = 0.4429, (-1.5 x 1.1279 + 3.5 x 0.9035) / pi; 2^2 / (2 x 7).
        Assert.Equal(0.468, DegreeDays.SingleSine(7, 14, 12), 5e-4);
        Assert.Equal(0.286, DegreeDays.SingleTriangle(7, 14, 12), 5e-4);
    }

    // Brute force twin: the curve itself, cut at both thresholds and added up in 100,000 steps.
    [Theory]
    [InlineData(3.3, 17.9, 10, 15.5)]
    [InlineData(-4, 12, 10, 30)]
    [InlineData(11, 33, 10, 30)]
    [InlineData(10, 25, 10, 25)]
    public void Are_the_area_between_the_thresholds(double minimum, double maximum, double lower, double upper)
    {
        double Area(Func<double, double> shape)
        {
            const int Steps = 100_000;
            return Enumerable.Range(0, Steps).Sum(step =>
                Math.Clamp(minimum + (maximum - minimum) * shape((step + 0.5) / Steps), lower, upper) - lower) / Steps;
        }

        Assert.Equal(Area(t => 1 - Math.Abs(2 * t - 1)), DegreeDays.SingleTriangle(minimum, maximum, lower, upper), 1e-6);
        Assert.Equal(Area(t => (1 - Math.Cos(2 * Math.PI * t)) / 2), DegreeDays.SingleSine(minimum, maximum, lower, upper), 1e-6);
    }

    [Fact]
    public void Are_nothing_on_a_day_below_the_threshold()
    {
        Assert.Equal(0, DegreeDays.Average(2, 10, 10));
        Assert.Equal(0, DegreeDays.SingleTriangle(2, 10, 10));
        Assert.Equal(0, DegreeDays.SingleSine(2, 10, 10));
    }

    [Fact]
    public void Of_a_day_without_range_are_the_difference()
    {
        Assert.Equal(5, DegreeDays.SingleTriangle(15, 15, 10));
        Assert.Equal(5, DegreeDays.SingleSine(15, 15, 10));
    }
}
