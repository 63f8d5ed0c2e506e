using System.Globalization;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Pictures;
using CanopySim.Files.Charts;

namespace CanopySim.Viewer.Tests.Pictures;

public class LegendTest
{
    [Theory]
    [InlineData(LeafQuantity.Age, Units.Metric, "days", "0 40 80 120 160 +")]
    [InlineData(LeafQuantity.Efficiency, Units.Metric, "% of its own best", "0 20 40 60 80 100")]
    [InlineData(LeafQuantity.LightNow, Units.Metric, "µmol of PAR absorbed per m² and s", "0 250 500 750 1000 1250 1500 +")]
    [InlineData(LeafQuantity.TemperatureNow, Units.Metric, "°C", "10 20 30 40")]
    [InlineData(LeafQuantity.TemperatureNow, Units.Us, "°F", "60 80 100")]
    [InlineData(LeafQuantity.Shoot, Units.Metric, "each shoot another color than its neighbors", "")]
    public void Numbers_are_round_and_in_the_readers_unit(LeafQuantity quantity, Units units, string unit, string numbers)
    {
        var legend = Legend.Of(LeafColoring.Fixed(quantity), units);
        Assert.Equal(unit, legend.Unit);
        Assert.Equal(numbers, string.Join(" ", legend.Numbers.Select(number => number.Text)));
        Assert.Equal(256, legend.Table.Length);
    }

    [Fact]
    public void A_number_stands_where_its_color_is()
    {
        foreach (var quantity in Enum.GetValues<LeafQuantity>().Where(quantity => quantity != LeafQuantity.Shoot))
        {
            var coloring = LeafColoring.Fixed(quantity);
            foreach (var (share, text) in Legend.Of(coloring, Units.Metric).Numbers)
            {
                var value = float.Parse(text.Replace('−', '-').TrimEnd('+'), CultureInfo.InvariantCulture);
                Assert.Equal(coloring.ShareOf(value), share, 3);
            }
        }
    }
}
