using CanopySim.Drawing.Pictures;
using CanopySim.Drawing.Views;
using CanopySim.Files.Charts;
using CanopySim.Training;
using SkiaSharp;

namespace CanopySim.Viewer.Tests.Pictures;

/// <summary>Pictures of reports: of a season that was not recorded, from one place for all.</summary>
public sealed class PortraitPicturesTest
{
    [Fact]
    public void TheBladesOfAPortraitAreThoseOfTheRecordedEvening()
    {
        var (portrait, drawn) = (RecordedBlock.KeptCanopy.Portrait, RecordedBlock.KeptCanopy.Portrait.Drawn);
        using var recording = RecordedBlock.Open();
        var leaves = recording.Leaves(recording.DayCount - 1);
        Assert.Equal(recording.Row(recording.DayCount - 1).Date, portrait.Date);
        Assert.Equal(portrait.AgeOfBlade.Count, drawn.Blades.Count);
        var ages = recording.Canopy(recording.DayCount - 1).Blades.Select((blade, i) => (blade.LeafId, leaves.AgeDays[i]))
            .ToDictionary();
        var both = drawn.Blades.Select((blade, i) => (blade.LeafId, Age: portrait.AgeOfBlade[i]))
            .Where(one => ages.ContainsKey(one.LeafId)).ToList();
        Assert.InRange(both.Count, (int)(0.9 * ages.Count), ages.Count);
        Assert.All(both, one => Assert.Equal(ages[one.LeafId], one.Age));
    }

    [Fact]
    public void OneCanopyLooksTheSameBesideAnyAndFitsIntoAReport()
    {
        using var context = RecordedBlock.Context();
        using var pictures = new PortraitPictures(context);
        var canopy = RecordedBlock.KeptCanopy;
        var bare = canopy with
        {
            Portrait = canopy.Portrait with { Drawn = new([], [], []), AgeOfBlade = [] },
        };
        var drawn = pictures.Draw([canopy, bare, canopy]);
        Assert.Equal(drawn[0].Png, drawn[2].Png);
        Assert.NotEqual(drawn[0].Png, drawn[1].Png);
        Assert.InRange(drawn[0].Png.Length, 20_000, 300_000);
        Assert.Contains("each leaf in the color of its age; half of them are", drawn[0].Caption);
        Assert.Contains("with the most leaf of the season", drawn[0].Caption);
        using var bitmap = SKBitmap.Decode(drawn[0].Png);
        Assert.Equal(PortraitPictures.Width, bitmap.Width);
        Assert.True(bitmap.Height > PortraitPictures.SceneHeight);
    }

    // 256 colors must still be those of the legend: a blade's color is met within a few steps of 255.
    [Fact]
    public void TheColorsOfAgesAreInThePicture()
    {
        using var context = RecordedBlock.Context();
        using var pictures = new PortraitPictures(context);
        using var bitmap = SKBitmap.Decode(pictures.Draw([RecordedBlock.KeptCanopy])[0].Png);
        var band = new HashSet<SKColor>();
        for (var y = PortraitPictures.SceneHeight; y < bitmap.Height; y++)
            for (var x = 0; x < bitmap.Width; x++) band.Add(bitmap.GetPixel(x, y));
        foreach (var age in (int[])[0, 40, 80, 120, 160])
        {
            var rgb = ChartStyle.AgeColor(age);
            Assert.Contains(band, color => Math.Abs(color.Red - (int)(byte)(rgb >> 16)) <= 8
                && Math.Abs(color.Green - (int)(byte)(rgb >> 8)) <= 8 && Math.Abs(color.Blue - (int)(byte)rgb) <= 8);
        }
    }

    [Fact]
    public void AViewThatSuitsAllStandsInTheNarrowestAlleyAndSeesTheHighest()
    {
        var block = BlockShape.Of(RecordedBlock.KeptCanopy.Scenario);
        var roof = block with { Top = 2.5f, RowSpacing = 1.5f, HasRoof = true };
        var both = BlockShape.Around([block, roof]);
        Assert.Equal((Math.Max(2.5f, block.Top), 1.5f, true), (both.Top, both.RowSpacing, both.HasRoof));
        Assert.Equal(block.Cell, both.Cell);
        Assert.Equal(TrellisForm.UprightHedge, RecordedBlock.KeptCanopy.Scenario.Trellis.Form);
    }
}
