using CanopySim.Protection;
using CanopySim.Training;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Protection;

/// <summary>
/// Sulfur: not at or before forecast over 85 °F (Michigan State University Extension in Western Farm Press); not within
/// 14 days of oil (labels, from memory).
/// </summary>
public class SprayCautionsTests
{
    private static readonly DateOnly First = new(2025, 6, 1);

    [Theory]
    [InlineData(85, 0)]
    [InlineData(86, 1)]
    public void Sulfur_before_heat_calls_for_a_caution(double fahrenheit, int cautions)
    {
        var days = Days(20, 20, (fahrenheit - 32) / 1.8, 20);
        var found = SprayCautions.Of([new SprayOnDay(0, "first", First, SprayKind.Sulfur)], days);
        Assert.Equal(cautions, found.Count);
        Assert.All(found, caution => Assert.Equal((SprayRisk.SulfurInHeat, First.AddDays(2)), (caution.Risk, caution.On)));
    }

    [Fact]
    public void Other_sprays_and_later_heat_call_for_none()
    {
        Assert.Empty(SprayCautions.Of([new SprayOnDay(0, "first", First, SprayKind.Other)], Days(40)));
        Assert.Empty(SprayCautions.Of([new SprayOnDay(0, "first", First, SprayKind.Sulfur)], Days(20, 20, 20, 20, 40)));
    }

    [Theory]
    [InlineData(13, 1)]
    [InlineData(-13, 1)]
    [InlineData(14, 0)]
    public void Oil_within_fourteen_days_of_sulfur_calls_for_a_caution(int days, int cautions)
    {
        var found = SprayCautions.Of(
            [new SprayOnDay(0, "first", First, SprayKind.Sulfur), new SprayOnDay(1, "second", First.AddDays(days), SprayKind.Oil)], []);
        Assert.Equal(cautions, found.Count);
        Assert.All(found, caution => Assert.Equal((0, SprayRisk.SulfurNearOil), (caution.Spray.Number, caution.Risk)));
    }

    [Fact]
    public void A_caution_is_a_sentence_that_names_the_spray_and_the_day() => Assert.Equal(
        "canopy_work.sprays.2 on 2025-06-01 is sulfur, and 2025-06-02 reaches 31.5 °C: over 29.4 °C (85 °F) it can burn leaves and "
        + "fruit; the label decides.",
        SprayCautions.Of([new SprayOnDay(2, "third", First, SprayKind.Sulfur)], Days(20, 31.5))[0].Words);

    private static List<WeatherDay> Days(params double[] celsius) =>
        [.. celsius.Select((at, i) => new WeatherDay
        {
            Date = First.AddDays(i),
            Hours = [.. Enumerable.Repeat(new WeatherHour(at, 1, 101, 1, 0, 0, 0, 0), 24)],
        })];
}
