using System.Numerics;
using CanopySim.Files.Charts;
using CanopySim.Geometry;
using CanopySim.Training;
using CanopySim.Views;
using SkiaSharp;
using Xunit;

namespace CanopySim.Files.Tests.Charts;

/// <summary>Wires and posts stand in the views where the trellis has them; the canopy is one small leaf.</summary>
public class CanopyPicturesTest
{
    private const double Frame = 2.6;
    private const double Ground = Frame - 0.1;
    private const int Middle = 240;

    [Theory]
    [InlineData(TrellisForm.UprightHedge)]
    [InlineData(TrellisForm.HangingCurtain)]
    public void WiresAreDrawnAtTheirHeights(TrellisForm form)
    {
        var trellis = new Trellis { Form = form };
        using var front = View(trellis, 0);
        foreach (var wire in TrellisParts.WiresOf(trellis))
            Assert.True(IsDark(front, Middle, PixelOf(Ground - wire.Height)), $"no wire at {wire.Height} m");
        using var along = View(trellis, 1);
        foreach (var wire in TrellisParts.WiresOf(trellis))
            Assert.True(
                IsDark(along, PixelOf((0.5 * Frame) + wire.Across), PixelOf(Ground - wire.Height)),
                $"no end of a wire at {wire.Across} m, {wire.Height} m");
    }

    [Fact]
    public void WiresAndArmsAreSeenFromAbove()
    {
        var trellis = new Trellis { Form = TrellisForm.TwinCurtain };
        using var above = View(trellis, 2);
        foreach (var wire in TrellisParts.WiresOf(trellis))
            Assert.True(IsDark(above, Middle, PixelOf((0.5 * Frame) + wire.Across)), $"no wire at {wire.Across} m");
        var arm = TrellisParts.BarsOf(trellis).First(bar => bar.FromAcross != bar.ToAcross);
        Assert.True(IsDark(above, PixelOf(Frame - 0.12), PixelOf((0.5 * Frame) + (0.5 * arm.FromAcross))), "no arm");
    }

    [Fact]
    public void ABushHasNone()
    {
        using var front = View(new Trellis { Form = TrellisForm.Bush }, 0);
        // Above the bar of the scale and the line of the ground nothing is dark.
        for (var y = 0; y < 400; y++) Assert.False(IsDark(front, Middle, y), $"row {y}");
    }

    private static SKBitmap View(Trellis trellis, int view)
    {
        var scenario = InventedSeason.Scenario() with { Trellis = trellis };
        var portrait = new CanopyPortrait
        {
            Date = InventedSeason.Veraison,
            IsAtVeraison = true,
            Scene = new Scene
            {
                Cell = new Cell(scenario.Rows.Spacing, 2),
                Corners = [new Vector3(0, 0.01f, 0.01f), new Vector3(0, 0.02f, 0.01f), new Vector3(0, 0.01f, 0.02f)],
                SurfaceOfTriangle = [0],
                Kinds = [SurfaceKind.Blade],
                LeafIds = [1],
            },
            AgeOfSurface = [10],
            Drawn = new DrawnCanopy([], [], []),
            AgeOfBlade = [],
        };
        return SKBitmap.Decode(CanopyPictures.All(portrait, scenario, Frame, Units.Metric)[view].Png);
    }

    private static int PixelOf(double meters) => (int)(meters / Frame * 480);

    // In reach of a pixel, since a thin line lies between two.
    private static bool IsDark(SKBitmap picture, int x, int y) =>
        Enumerable.Range(y - 1, 3).Where(row => row >= 0 && row < picture.Height).Any(row =>
            picture.GetPixel(x, row) is var color && color.Red + color.Green + color.Blue < 300);
}
