using CanopySim.Protection;
using Xunit;

namespace CanopySim.Tests.Protection;

/// <summary>
/// As a trade help page prints them that cites the University of California and the American Phytopathological Society
/// (seen, secondary): 14 to 21 days at 0 to 30, 10 to 17 at 40 to 60, 7 above, of sulfur; 21, 21 and 14 of synthetics.
/// </summary>
public class MildewIntervalTests
{
    [Theory]
    [InlineData(MildewPressure.Low, 14, 21, 21, "longest")]
    [InlineData(MildewPressure.Moderate, 10, 17, 21, "longest")]
    [InlineData(MildewPressure.High, 7, 7, 14, "shortest")]
    public void Intervals_are_the_printed_ones(MildewPressure pressure, int from, int to, int others, string ofLabel)
    {
        var interval = MildewInterval.Of(pressure);
        Assert.Equal((from, to, others), (interval.SulfurFrom, interval.SulfurTo, interval.Others));
        Assert.Contains(ofLabel, interval.OfLabel);
    }

    // UC IPM 2014: wine and raisin grapes.
    [Fact]
    public void Sprays_end_at_twelve_Brix() => Assert.Equal(12, MildewInterval.LastSugarBrix);
}
