using CanopySim.Growth;
using CanopySim.Phenology;
using Xunit;

namespace CanopySim.Tests.Growth;

public class ThermalResponseTests
{
    private static readonly GrowthParameters Parameters = new();

    // Days from 4 d after budbreak to flowering at 16 h day / 8 h night: Buttrose & Hale 1973, Am J Enol Vitic 24:14-16.
    private static readonly (double Day, double Night, double Days)[] Regimes = [(14, 9, 70), (26, 21, 24), (38, 33, 20)];

    /// <summary>
    /// No straight line joins the three regimes: above 10 °C they need 163, 344 and 527 °C d. This response must bring them
    /// within 20 % of their mean; by hand 408, 428 and 315 thermal units.
    /// </summary>
    [Fact]
    public void Three_regimes_need_about_the_same_thermal_units()
    {
        var units = Regimes.Select(regime => regime.Days * UnitsOfDay(regime.Day, regime.Night)).ToArray();
        Assert.Equal(408, units[0], 1.0);
        Assert.Equal(428, units[1], 1.0);
        Assert.Equal(315, units[2], 1.0);
        var mean = units.Average();
        Assert.All(units, unit => Assert.InRange(unit / mean, 0.8, 1.2));
    }

    /// <summary>The straight lines fail the same measure, so it can tell.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void Straight_lines_do_not(double baseTemperature)
    {
        var units = Regimes.Select(regime => regime.Days * (((16 * regime.Day) + (8 * regime.Night)) / 24 - baseTemperature)).ToArray();
        var mean = units.Average();
        Assert.Contains(units, unit => Math.Abs((unit / mean) - 1) > 0.18);
        Assert.True(units.Max() / units.Min() > 408.0 / 315);
    }

    /// <summary>The way to bloom that the cultivar gives is that of the two regimes below the optimum with 4 d before them, within a quarter.</summary>
    [Fact]
    public void Bloom_sum_agrees()
    {
        foreach (var (day, night, days) in Regimes.Take(2))
            Assert.InRange(new Cultivar().BloomSum / ((days + 4) * UnitsOfDay(day, night)), 0.75, 1.25);
    }

    [Fact]
    public void Is_flat_between_optimum_and_decline_and_nothing_outside()
    {
        Assert.Equal(0, ThermalResponse.Rate(6.5, Parameters));
        Assert.Equal(0, ThermalResponse.Rate(-3, Parameters));
        Assert.Equal(1, ThermalResponse.Rate(7.5, Parameters), 1e-12);
        Assert.Equal(21.5, ThermalResponse.Rate(28, Parameters), 1e-12);
        Assert.Equal(21.5, ThermalResponse.Rate(34, Parameters), 1e-12);
        Assert.Equal(10.75, ThermalResponse.Rate(39, Parameters), 1e-12);
        Assert.Equal(0, ThermalResponse.Rate(44, Parameters));
    }

    private static double UnitsOfDay(double day, double night) =>
        ((16 * ThermalResponse.Rate(day, Parameters)) + (8 * ThermalResponse.Rate(night, Parameters))) / 24;
}
