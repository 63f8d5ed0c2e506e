using CanopySim.Files.Charts;
using CanopySim.Files.Quantities;
using Xunit;

namespace CanopySim.Files.Tests.Quantities;

public class ReadersUnitsTest
{
    // 1 ft = 0.3048 m, 1 in = 2.54 cm, 1 lb = 0.45359237 kg, °F = 1.8 °C + 32.
    [Theory]
    [InlineData("2.4 m", "2.4 m", "7.87 ft")]
    [InlineData("-2 degC", "-2 °C", "28.4 °F")]
    [InlineData("150 degC d", "150 °C d", "270 °F d")]
    [InlineData("15 1/m", "15 1/m", "4.57 1/ft")]
    [InlineData("120 cm2", "120 cm²", "18.6 in²")]
    [InlineData("3 kg", "3 kg", "6.61 lb")]
    [InlineData("[0.9 m, 1.2 m]", "[0.9 m, 1.2 m]", "[2.95 ft, 3.94 ft]")]
    [InlineData("[[30 d, 0.9], [60 d, 1]]", "[[30 d, 0.9], [60 d, 1]]", "[[30 d, 0.9], [60 d, 1]]")]
    [InlineData("850 umol m-2 s-1", "850 umol m-2 s-1", "850 umol m-2 s-1")]
    [InlineData("0.35", "0.35", "0.35")]
    [InlineData("upright-hedge", "upright-hedge", "upright-hedge")]
    [InlineData("2024-04-15", "2024-04-15", "2024-04-15")]
    [InlineData("Block 2 m of the hill", "Block 2 m of the hill", "Block 2 m of the hill")]
    public void ValuesStandInTheUnitsOfTheReader(string value, string metric, string us)
    {
        Assert.Equal(metric, ReadersUnits.Show(value, Units.Metric));
        Assert.Equal(us, ReadersUnits.Show(value, Units.Us));
    }
}
