using CanopySim.Files.Charts;
using Xunit;

namespace CanopySim.Files.Tests.Charts;

public class ChartStyleTest
{
    /// <summary>Web Content Accessibility Guidelines 2.1, success criterion 1.4.3: 4.5 : 1 for text.</summary>
    [Theory]
    [InlineData(ChartStyle.Text, ChartStyle.Paper)]
    [InlineData(ChartStyle.QuietText, ChartStyle.Paper)]
    [InlineData(ChartStyle.Accent, ChartStyle.Paper)]
    [InlineData(ChartStyle.Line, ChartStyle.Paper)]
    [InlineData(ChartStyle.TextOnNight, ChartStyle.Night)]
    [InlineData(ChartStyle.QuietTextOnNight, ChartStyle.Night)]
    [InlineData(ChartStyle.AccentOnNight, ChartStyle.Night)]
    public void WordsStandOutFromTheirSurface(uint text, uint surface)
    {
        var (light, dark) = (Math.Max(Luminance(text), Luminance(surface)), Math.Min(Luminance(text), Luminance(surface)));
        var contrast = (light + 0.05) / (dark + 0.05);
        Assert.True(contrast >= 4.5, $"{contrast:F2} : 1");
    }

    /// <summary>The ends of the published table: Nuñez, Anderton &amp; Renslow 2018, PLoS ONE 13(7): e0199239.</summary>
    [Fact]
    public void CividisRunsFromBlueToYellow()
    {
        Assert.Equal(0x00204Cu, Cividis.At(0));
        Assert.Equal(0xFFE945u, Cividis.At(1));
        Assert.Equal(Cividis.At(0), Cividis.At(-3));
        Assert.Equal(Cividis.At(1), Cividis.At(7));
        Assert.Equal(Cividis.At(0), Cividis.At(double.NaN));
    }

    [Fact]
    public void CividisGrowsLighterAllTheWay()
    {
        // Cut to eight bits, some neighbors are one color; none is darker than the one before.
        for (var i = 1; i < 256; i++)
            Assert.True(Luminance(Cividis.At(i / 255.0)) >= Luminance(Cividis.At((i - 1) / 255.0)), $"step {i}");
        Assert.True(Luminance(Cividis.At(1)) > 0.79);
        Assert.True(Luminance(Cividis.At(0)) < 0.02);
    }

    [Fact]
    public void AgeClassesFollowEachOtherFromYoungToOld()
    {
        Assert.Equal(0, ChartStyle.AgeClasses[0].FromD);
        Assert.Null(ChartStyle.AgeClasses[^1].ToD);
        foreach (var (younger, older) in ChartStyle.AgeClasses.Zip(ChartStyle.AgeClasses.Skip(1)))
        {
            Assert.Equal(younger.ToD, older.FromD);
            Assert.True(Luminance(older.Rgb) > Luminance(younger.Rgb));
        }
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, 0)]
    [InlineData(19.9, 0)]
    [InlineData(20, 1)]
    [InlineData(139, 6)]
    [InlineData(140, 7)]
    [InlineData(400, 7)]
    public void AnAgeBelongsToOneClass(double age, int index) => Assert.Equal(index, ChartStyle.AgeClassOf(age).Index);

    [Fact]
    public void TheRampWithoutStepsMeetsEveryClassAtItsMiddle()
    {
        foreach (var ages in ChartStyle.AgeClasses)
            Assert.Equal(ages.Rgb, ChartStyle.AgeColor(ages.FromD + (ChartStyle.AgeClassDays / 2.0)));
    }

    private static double Luminance(uint rgb)
    {
        return (0.2126 * Linear(rgb >> 16)) + (0.7152 * Linear(rgb >> 8)) + (0.0722 * Linear(rgb));

        static double Linear(uint channel)
        {
            var share = (channel & 255) / 255.0;
            return share <= 0.03928 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
        }
    }
}
