using CanopySim.Numerics;
using Xunit;

namespace CanopySim.Tests.Numerics;

public class QuantileTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.25, 2)]
    [InlineData(0.5, 3)]
    [InlineData(0.9, 4.6)]
    [InlineData(1, 5)]
    public void Five_values_by_hand(double share, double expected) => Assert.Equal(expected, Quantile.Of([1, 2, 3, 4, 5], share), 12);

    [Fact]
    public void What_never_comes_is_infinitely_late()
    {
        double[] days = [10, 12, double.PositiveInfinity, double.PositiveInfinity];
        Assert.Equal(12, Quantile.Of(days, 1.0 / 3), 9);
        Assert.Equal(double.PositiveInfinity, Quantile.Of(days, 0.5));
        Assert.Equal(double.PositiveInfinity, Quantile.Of(days, 0.9));
    }

    [Fact]
    public void Nothing_has_no_quantile() => Assert.Throws<ArgumentOutOfRangeException>(() => Quantile.Of([], 0.5));
}
