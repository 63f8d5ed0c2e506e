using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Pictures;
using CanopySim.Drawing.Views;
using CanopySim.Files.Charts;
using CanopySim.Photosynthesis;

namespace CanopySim.Viewer.Tests.Leaves;

/// <summary>At night leaves have the air's temperature and give off what the model says they breathe.</summary>
public sealed class DarkHoursTest
{
    private const int Night = 2;

    [Fact]
    public void EveryHourOfADayHasATemperatureAndAnAssimilation()
    {
        using var recording = RecordedBlock.Open();
        var day = recording.DayCount - 1;
        for (var hour = 0; hour < 24; hour++)
        {
            var temperatures = LeafValues.Of(recording, day, hour, LeafQuantity.TemperatureNow);
            Assert.All(temperatures, value => Assert.True(float.IsFinite(value)));
            Assert.All(
                LeafValues.Of(recording, day, hour, LeafQuantity.AssimilationNow),
                value => Assert.True(float.IsFinite(value)));
            if (!DarkHours.IsDark(recording, day, hour)) continue;
            var air = (float)recording.WeatherOf(day).Hours[hour].AirTemperatureCelsius;
            Assert.All(temperatures, value => Assert.Equal(air, value));
        }
    }

    // The rate of a leaf in full light at its best, and what is left of it in deep shade and without efficiency: none
    // of it goes into what is tested.
    [Fact]
    public void ALeafBreathesWithinTheBoundsOfTheModel()
    {
        using var recording = RecordedBlock.Open();
        var day = recording.DayCount - 1;
        var (leaf, leaves) = (recording.Scenario.Leaf, recording.Leaves(day));
        var best = LeafRespiration.At(recording.WeatherOf(day).Hours[Night].AirTemperatureCelsius, leaf);
        var values = LeafValues.Of(recording, day, Night, LeafQuantity.AssimilationNow);
        for (var i = 0; i < values.Length; i++)
        {
            var most = best * (0.35 + (0.65 * leaves.Efficiency[i]));
            Assert.InRange(-values[i], (0.97 * leaf.ShadeCapacity * most) - 0.01, (1.03 * most) + 0.01);
        }

        var warmest = Enumerable.Range(0, 24).Where(hour => DarkHours.IsDark(recording, day, hour))
            .MaxBy(hour => recording.WeatherOf(day).Hours[hour].AirTemperatureCelsius);
        Assert.True(LeafValues.Of(recording, day, warmest, LeafQuantity.AssimilationNow).Sum() < values.Sum());
    }

    [Theory]
    [InlineData(LeafQuantity.LightNow, "light now, none, since it is dark: 0 ")]
    [InlineData(LeafQuantity.TemperatureNow, "leaf temperature, in the dark that of the air: ")]
    [InlineData(LeafQuantity.AssimilationNow, "assimilation now, in the dark respiration alone, −")]
    public void TheSentenceSaysThatItIsDark(LeafQuantity quantity, string words)
    {
        using var recording = RecordedBlock.Open();
        var day = recording.DayCount - 1;
        var values = LeafValues.Of(recording, day, Night, quantity);
        var moment = new Moment(day, Night + 0.5, quantity);
        Assert.Contains(words, PictureText.Sentence(recording, moment, values, ViewPoint.Along, Units.Metric));
    }
}
