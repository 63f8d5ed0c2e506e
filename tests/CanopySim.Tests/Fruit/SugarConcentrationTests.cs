using CanopySim.Fruit;
using Xunit;

namespace CanopySim.Tests.Fruit;

public class SugarConcentrationTests
{
    // The project's table of the fit, worked out by hand: gravity to four decimals, sugar to whole grams.
    [Theory]
    [InlineData(16, 1.0654, 150)]
    [InlineData(18, 1.0741, 173)]
    [InlineData(20, 1.0830, 197)]
    [InlineData(21, 1.0875, 208)]
    [InlineData(22, 1.0920, 220)]
    [InlineData(24, 1.1011, 244)]
    [InlineData(26, 1.1103, 269)]
    public void Agrees_with_the_table(double brix, double gravity, double sugar)
    {
        Assert.Equal(gravity, SugarConcentration.SpecificGravity(brix), 5.1e-5);
        Assert.Equal(sugar, SugarConcentration.Sugar(brix), 0.5);
    }

    // Targets of sugar sums in g/L (Parker et al. 2020) in Brix, one decimal: 170, 200 and 220 are 17.7, 20.3 and 22.0, by the table.
    [Theory]
    [InlineData(170, 17.7)]
    [InlineData(200, 20.3)]
    [InlineData(220, 22.0)]
    public void Targets_by_volume_in_Brix(double sugar, double brix)
    {
        Assert.True(SugarConcentration.Sugar(brix - 0.05) < sugar);
        Assert.True(SugarConcentration.Sugar(brix + 0.05) > sugar);
    }

    // Density of sucrose solutions at 20 °C against water at 20 °C, handbook tables (ICUMSA), from memory: 10 Brix 1.0400, 20 Brix
    // 1.0829, 30 Brix 1.1291; the fit's own error is below 0.0002.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(10, 1.0400)]
    [InlineData(20, 1.0829)]
    [InlineData(30, 1.1291)]
    public void Is_the_gravity_of_sugar_water(double brix, double gravity) =>
        Assert.Equal(gravity, SugarConcentration.SpecificGravity(brix), 2e-4);

    [Fact]
    public void Water_holds_no_sugar()
    {
        Assert.Equal(0, SugarConcentration.TotalSolids(0));
        Assert.Equal(0, SugarConcentration.Sugar(1.5));
    }
}
