using CanopySim.Files.Report;
using CanopySim.Training;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Files.Tests.Report;

public sealed class TrellisSentencesTest
{
    [Fact]
    public void SaysWhatWasUnderstoodOfADividedTrellis() => Assert.Equal(
        [
            "trellis: open-u, 2 m of canopy to a meter of row; 45 shoots a vine, 15 a meter of canopy",
            "wall 1: shoots from a cordon at 0.9 m, 0.4 m to the left, led up to 2 m, leaning 12 deg to the left, 0.2 to 0.3 m wide",
            "wall 2: shoots from a cordon at 0.9 m, 0.4 m to the right, led up to 2 m, leaning 12 deg to the right, 0.2 to 0.3 m wide",
            "2 rows side by side, 2 vines in all",
        ],
        Of(
            new Trellis { Form = TrellisForm.OpenU, TopWireHeight = 2, CatchWires = [new(1.2, 0.2), new(1.5, 0.3)] },
            new RowLayout { RowsInCell = 2 }).Where(line => !line.StartsWith("wires", StringComparison.Ordinal)));

    [Fact]
    public void NamesEveryWire() => Assert.Contains(
        "wires, height and distance to the right of the row: 1.15 m, 0 m (cordon); 1 m, 0 m (cordon); 1 m, -0.15 m; 1 m, 0.15 m; 2.15 m, -0.15 m; 2.15 m, 0.15 m",
        Of(new Trellis { Form = TrellisForm.UpAndDown }, new RowLayout()));

    [Theory]
    [InlineData(TrellisForm.Bush, "wall 1: shoots from a head at 0.5 m, spread round it without wires")]
    [InlineData(TrellisForm.HighWire, "wall 1: shoots from a cordon at 1.6 m, free, bending by their own weight")]
    [InlineData(TrellisForm.HangingCurtain, "wall 1: shoots from a cordon at 1.7 m, led down, 0.5 m wide")]
    [InlineData(TrellisForm.Overhead, "wall 1: shoots from a cordon at 2 m, over a roof at 2 m, 2 m wide")]
    public void SaysHowShootsAreLed(TrellisForm form, string sentence) => Assert.Contains(sentence, Of(new Trellis { Form = form }, new RowLayout()));

    private static IEnumerable<string> Of(Trellis trellis, RowLayout rows) => TrellisSentences.Of(new Scenario
    {
        Name = "block",
        Site = new Site { Latitude = 40, Longitude = 0 },
        Weather = new WeatherOptions { File = "none" },
        Rows = rows,
        Trellis = trellis,
    });
}
