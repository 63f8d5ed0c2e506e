using CanopySim.Fruit;
using Xunit;

namespace CanopySim.Tests.Fruit;

public class BerryTests
{
    private static readonly FruitParameters Parameters = new();

    // 5.5 Brix at veraison: common practice, no source.
    [Theory]
    [InlineData(1.0)]
    [InlineData(0.6)]
    public void Sugar_at_veraison_is_as_given_whatever_the_size(double size) =>
        Assert.Equal(5.5, Berry.Brix(size * Berry.SugarAtVeraison(Parameters), size, Parameters), 1e-9);

    // The berry about doubles in the second phase: Coombe & McCarthy 2000, via a trade page.
    [Fact]
    public void Fresh_mass_doubles_while_sugar_loads()
    {
        var start = Berry.FreshMass(Berry.SugarAtVeraison(Parameters), 1, Parameters);
        var full = Berry.FreshMass(Parameters.LoadingEnds / 100 * Parameters.BerryFreshMass, 1, Parameters);
        Assert.Equal(2, full / start, 1e-9);
        Assert.Equal(Parameters.BerryFreshMass, full, 1e-9);
    }

    [Fact]
    public void Sugar_and_fresh_mass_rise_together()
    {
        var (mass, brix) = (0.0, 0.0);
        for (var sugar = 0.0; sugar < 0.35; sugar += 0.005)
        {
            Assert.True(Berry.FreshMass(sugar, 1, Parameters) >= mass);
            Assert.True(Berry.Brix(sugar, 1, Parameters) >= brix);
            (mass, brix) = (Berry.FreshMass(sugar, 1, Parameters), Berry.Brix(sugar, 1, Parameters));
        }

        Assert.Equal(0, Berry.Brix(0.1, 0, Parameters));
    }

    // Best at 30 °C, straight down to 40: Greer & Weedon 2016, Funct Plant Biol 43:986-1001. The ends are assumed.
    [Theory]
    [InlineData(5, 0)]
    [InlineData(19, 0.5)]
    [InlineData(30, 1)]
    [InlineData(36, 0.5)]
    [InlineData(45, 0)]
    public void Loading_is_best_at_30_degrees(double temperature, double factor) =>
        Assert.Equal(factor, LoadingTemperature.Factor(temperature), 1e-12);
}
