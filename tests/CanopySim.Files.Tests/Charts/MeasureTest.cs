using CanopySim.Files.Charts;
using Xunit;

namespace CanopySim.Files.Tests.Charts;

public class MeasureTest
{
    /// <summary>
    /// Factors of NIST Special Publication 811 (2008), appendix B.8, to as many digits as it prints there: foot, pound,
    /// ounce, acre, short ton and gallon in metric units. The reciprocals and quotients are formed here.
    /// </summary>
    [Fact]
    public void ConversionsFollowTheExactDefinitions()
    {
        Assert.Equal(100 / 2.54, Measure.Length.In(Units.Us, 100), 1e-12);
        Assert.Equal(1 / 9.290304e-2, Measure.LeafArea.In(Units.Us, 1), 1e-9);
        Assert.Equal(1 / 6.4516, Measure.LeafAreaOfShoot.In(Units.Us, 1), 1e-12);
        Assert.Equal(1 / 0.45359237, Measure.Mass.In(Units.Us, 1), 1e-12);
        Assert.Equal(1 / 28.34952, Measure.SmallMass.In(Units.Us, 1), 1e-8);
        Assert.Equal(1 / 3.785412, Measure.Volume.In(Units.Us, 1), 1e-7);
        Assert.Equal(0.3048, Measure.PerLength.In(Units.Us, 1), 1e-12);
        Assert.Equal(0.3048 / 9.290304e-2, Measure.LeafAreaPerLength.In(Units.Us, 1), 1e-9);
        Assert.Equal(0.45359237 / 9.290304e-2, Measure.LeafAreaPerFruit.In(Units.Us, 1), 1e-9);
        Assert.Equal(0.45359237, Measure.SugarPerFruit.In(Units.Us, 1), 1e-12);

        // 1 t/ha = 1000 kg / (907.1847 kg per short ton) × (4046.856 m² per acre) / (10000 m² per hectare).
        Assert.Equal(1000 / 907.1847 * 4046.856 / 1e4, Measure.YieldPerArea.In(Units.Us, 1), 1e-6);
    }

    [Fact]
    public void MetricValuesStayAsTheyAre()
    {
        Assert.Equal(131.6, Measure.Length.In(Units.Metric, 131.6));
        Assert.Equal("132 cm", Measure.Length.Text(Units.Metric, 131.6, 0));
        Assert.Equal("52 in", Measure.Length.Text(Units.Us, 131.6, 0));
    }

    [Fact]
    public void ThermometersAreShiftedToo()
    {
        Assert.Equal("10.0 °C", Measure.Temperature(Units.Metric, 10, 1));
        Assert.Equal("50.0 °F", Measure.Temperature(Units.Us, 10, 1));
    }

    [Theory]
    [InlineData(-0.04, 1, "0.0")]
    [InlineData(-1.26, 1, "−1.3")]
    [InlineData(1234.6, 0, "1235")]
    public void NumbersReadWell(double value, int decimals, string text) => Assert.Equal(text, Measure.Number(value, decimals));

    [Fact]
    public void SugarShowsADecimalOnlyWhereItSaysSomething()
    {
        Assert.Equal("22 Brix", Measure.Brix(22));
        Assert.Equal("22.5 Brix", Measure.Brix(22.5));
    }
}
