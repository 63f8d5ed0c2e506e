using CanopySim.Files.Quantities;
using CanopySim.Parameters;
using Xunit;

namespace CanopySim.Files.Tests.Quantities;

public sealed class QuantityTextTest
{
    // Factors are exact by definition: foot 0.3048 m, inch 0.0254 m, pound 0.45359237 kg, °F = 1.8 °C + 32.
    [Theory]
    [InlineData("2.4 m", "m", 2.4)]
    [InlineData("2.4m", "m", 2.4)]
    [InlineData("240 cm", "m", 2.4)]
    [InlineData("8 ft", "m", 2.4384)]
    [InlineData("8'", "m", 2.4384)]
    [InlineData("6 ft 3 in", "m", 1.905)]
    [InlineData("6' 3\"", "m", 1.905)]
    [InlineData("19 in", "m", 0.4826)]
    [InlineData("19 inches", "m", 0.4826)]
    [InlineData("86 °F", "degC", 30)]
    [InlineData("86 degF", "degC", 30)]
    [InlineData("86 F", "degC", 30)]
    [InlineData("303.15 K", "degC", 30)]
    [InlineData("−2.5 °C", "degC", -2.5)]
    [InlineData("2 kg", "kg", 2)]
    [InlineData("2 lb", "kg", 0.90718474)]
    [InlineData("2 lbs", "g", 907.18474)]
    [InlineData("45 deg", "deg", 45)]
    [InlineData("45°", "deg", 45)]
    [InlineData("10 d", "d", 10)]
    [InlineData("2 weeks", "d", 14)]
    [InlineData("300 degC d", "degC d", 300)]
    [InlineData("300 °C d", "degC d", 300)]
    [InlineData("540 °F·d", "degC d", 300)]
    [InlineData("300 degC days", "degC d", 300)]
    [InlineData("54 umol m-2 s-1", "umol m-2 s-1", 54)]
    [InlineData("54 µmol m⁻² s⁻¹", "umol m-2 s-1", 54)]
    [InlineData("54 μmol/m²/s", "umol m-2 s-1", 54)]
    [InlineData("54 umol per m2 per s", "umol m-2 s-1", 54)]
    [InlineData("0.2 mol m-2 s-1", "umol m-2 s-1", 200_000)]
    [InlineData("15 1/m", "1/m", 15)]
    [InlineData("15 per m", "1/m", 15)]
    [InlineData("4.572 1/ft", "1/m", 15)]
    [InlineData("15 m⁻¹", "1/m", 15)]
    [InlineData("0.28 g/cm", "g/cm", 0.28)]
    [InlineData("28 g/m", "g/cm", 0.28)]
    [InlineData("3.5 kPa0.5", "kPa0.5", 3.5)]
    [InlineData("3.5 kPa^0.5", "kPa0.5", 3.5)]
    [InlineData("0.16 degC-0.5", "degC-0.5", 0.16)]
    [InlineData("22 Brix", "Brix", 22)]
    [InlineData("22 °Brix", "Brix", 22)]
    [InlineData("420 umol mol-1", "umol mol-1", 420)]
    [InlineData("420 µmol/mol", "umol mol-1", 420)]
    [InlineData("420 ppm", "umol mol-1", 420)]
    [InlineData("3 mg g-1 d-1", "g g-1 d-1", 0.003)]
    [InlineData("0.003 kg/kg/d", "g g-1 d-1", 0.003)]
    [InlineData("0.8 mm/d", "mm/d", 0.8)]
    [InlineData("0.8 mm per day", "mm/d", 0.8)]
    [InlineData("154 cm2", "cm2", 154)]
    [InlineData("154 cm²", "cm2", 154)]
    [InlineData("0.0154 m²", "cm2", 154)]
    [InlineData("75 g m-2", "g m-2", 75)]
    [InlineData("14.5 mg/d", "mg/d", 14.5)]
    [InlineData("0.1 1/d", "1/d", 0.1)]
    [InlineData("0.3", "1", 0.3)]
    [InlineData("30 %", "1", 0.3)]
    [InlineData("30%", "1", 0.3)]
    [InlineData("1e-2", "1", 0.01)]
    public void ReadsWhatPeopleWrite(string text, string unit, double expected)
    {
        var value = QuantityText.Read(text, new ParameterAttribute(unit, -1e9, 1e9, ""), out var fault);
        Assert.Null(fault);
        Assert.Equal(expected, value!.Value, Math.Abs(expected) * 1e-14);
    }

    [Theory]
    [InlineData("3 g g-1", "1")]
    [InlineData("3", "g g-1")]
    [InlineData("3 1/d", "g g-1 d-1")]
    [InlineData("3 h", "m")]
    [InlineData("3 M", "m")]
    [InlineData("3 m m", "m")]
    [InlineData("3 m3", "m")]
    [InlineData("3 m/", "m")]
    [InlineData("3 /m", "m")]
    [InlineData("3 //m", "1/m")]
    [InlineData("3 m0", "m")]
    [InlineData("3 %", "m")]
    [InlineData("% 3", "1")]
    [InlineData("3 ft 2", "degC")]
    [InlineData("0x10 m", "m")]
    [InlineData("1_000 m", "m")]
    [InlineData("+-3 m", "m")]
    [InlineData("٣ m", "m")]
    public void RefusesWhatMeasuresSomethingElse(string text, string unit)
    {
        Assert.Null(QuantityText.Read(text, new ParameterAttribute(unit, -1e9, 1e9, ""), out var fault));
        Assert.NotNull(fault);
    }

    [Fact]
    public void BoundsMayBeGivenInAnotherUnit()
    {
        var parameter = new ParameterAttribute("m", 0.3048, 0.9144, "");
        Assert.Equal(0.3048, QuantityText.Read("1 ft", parameter, out _)!.Value, 1e-12);
        Assert.Equal(0.9144, QuantityText.Read("36 in", parameter, out _)!.Value, 1e-12);
        Assert.Null(QuantityText.Read("36.001 in", parameter, out _));
    }
}
