using System.Globalization;
using System.Xml.Linq;
using CanopySim.Files.Charts;
using CanopySim.Growth;
using CanopySim.Results;
using SkiaSharp;
using Xunit;

namespace CanopySim.Files.Tests.Charts;

public class SeasonChartsTest
{
    public static TheoryData<string> Seasons => [.. Cases.Keys];

    private static readonly Dictionary<string, Func<SeasonResult>> Cases = new()
    {
        ["full"] = InventedSeason.Full,
        ["before bloom"] = () => InventedSeason.EndedOn(InventedSeason.Bloom.AddDays(-10)),
        ["before veraison"] = () => InventedSeason.EndedOn(InventedSeason.Veraison.AddDays(-1)),
        ["before ripeness"] = () => InventedSeason.EndedOn(InventedSeason.Ripe.AddDays(-1)),
        ["no fruit"] = InventedSeason.WithoutFruit,
        ["no days"] = InventedSeason.Empty,
        ["one day"] = () => OneDay(InventedSeason.Veraison.AddDays(9)),
        ["not finite"] = NotFinite,
        ["no curve"] = () => InventedSeason.Full() with { AgeCurve = new LeafAgeCurve { Points = [] } },
    };

    [Theory]
    [MemberData(nameof(Seasons))]
    public void EverySeasonHasEveryChart(string name)
    {
        foreach (var units in Enum.GetValues<Units>())
        {
            var pictures = Pictures(name, units);
            Assert.Equal(9, pictures.Select(p => p.Stem).Distinct().Count());
            Assert.Equal(SeasonCharts.CarbonByLeafAge, pictures[0].Stem);
            Assert.All(pictures, p => Assert.EndsWith(".", p.Caption));
            Assert.All(pictures, p => Assert.DoesNotContain('\n', p.Caption));
            Assert.All(pictures, p => Assert.DoesNotContain("NaN", p.Caption));
            Assert.All(pictures, IsDrawn);
        }
    }

    [Theory]
    [MemberData(nameof(Seasons))]
    public void SvgIsWellFormedAndItsWordsFitIn(string name)
    {
        foreach (var picture in Pictures(name, Units.Us))
        {
            foreach (var text in (string[])[picture.Svg, picture.NarrowSvg])
            {
                var svg = XDocument.Parse(text).Root!;
                var width = (double)svg.Attribute("width")!;
                Assert.DoesNotContain("nan", text, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("infinity", text, StringComparison.OrdinalIgnoreCase);
                Assert.Equal(picture.Caption, svg.Elements().Single(e => e.Name.LocalName == "desc").Value);
                foreach (var word in svg.Descendants().Where(e => e.Name.LocalName == "text"))
                {
                    Assert.True((double)word.Attribute("font-size")! >= 12);
                    var end = Place(word) + ((double?)word.Attribute("textLength") ?? 0);
                    Assert.True(end <= width, $"'{word.Value}' of {picture.Stem} ends at {end} of {width}");
                }
            }
        }
    }

    [Fact]
    public void TheChartsAreTheSameOnAnyNumberOfThreads()
    {
        var alone = SeasonCharts.All(InventedSeason.Full(), InventedSeason.Scenario());
        for (var round = 0; round < 2; round++)
        {
            var together = SeasonCharts.All(InventedSeason.Full(), InventedSeason.Scenario(), threads: 8);
            Assert.Equal(alone.Select(picture => (picture.Stem, picture.Svg, picture.NarrowSvg)), together.Select(picture => (picture.Stem, picture.Svg, picture.NarrowSvg)));
            Assert.All(alone.Zip(together), pair => Assert.Equal(pair.First.Png, pair.Second.Png));
        }
    }

    [Fact]
    public void TheSameSeasonGivesTheSameBytes()
    {
        var again = SeasonCharts.All(InventedSeason.Full(), InventedSeason.Scenario());
        foreach (var (one, other) in Pictures("full", Units.Metric).Zip(again))
        {
            Assert.Equal(one.Png, other.Png);
            Assert.Equal(one.Svg, other.Svg);
            Assert.Equal(one.NarrowSvg, other.NarrowSvg);
        }
    }

    [Fact]
    public void StagesStandOnEveryChartOfDatesWithNameAndDate()
    {
        string[] undated = [SeasonCharts.FruitCarbonByLeafAge, SeasonCharts.LeafAgeCurve];
        foreach (var picture in Pictures("full", Units.Metric).Where(p => !undated.Contains(p.Stem)))
        {
            var words = Words(picture.Svg);
            string[] stages = ["budbreak", "3 Apr", "bloom", "28 May", "veraison", "2 Aug", "ripe", "17 Sep"];
            Assert.All(stages, s => Assert.Contains(s, words));
            string[] months = ["May", "June", "July", "August", "September", "October"];
            Assert.All(months, m => Assert.Contains(m, words));
        }
    }

    [Fact]
    public void StagesThatWereNotReachedAreNotNamed()
    {
        var words = Words(Pictures("before veraison", Units.Metric)[0].Svg);
        Assert.Contains("bloom", words);
        Assert.DoesNotContain("veraison", words);
        Assert.DoesNotContain("ripe", words);
    }

    [Fact]
    public void ASeasonAcrossTheNewYearNamesBothYears()
    {
        var full = InventedSeason.Full();
        const int HalfAYear = 184;
        var south = full with
        {
            Days = [.. full.Days.Select(d => d with { Date = d.Date.AddDays(HalfAYear) })],
            LeafAges = [],
            Summary = full.Summary with
            {
                Dates = new StageDates(InventedSeason.Budbreak.AddDays(HalfAYear), null, null, null, null, InventedSeason.End.AddDays(HalfAYear)),
            },
        };
        var words = Words(SeasonCharts.All(south, InventedSeason.Scenario())[3].Svg);
        Assert.Contains("2023", words);
        Assert.Contains("2024", words);
    }

    [Fact]
    public void UnitsAreThoseAskedFor()
    {
        string Words1(string stem, Units units) => string.Join('|', Words(Pictures("full", units).Single(p => p.Stem == stem).Svg));
        Assert.Contains("m² of leaf", Words1(SeasonCharts.LeafAreaByLeafAge, Units.Metric));
        Assert.Contains("ft² of leaf", Words1(SeasonCharts.LeafAreaByLeafAge, Units.Us));
        Assert.Contains("shoot, cm", Words1(SeasonCharts.ShootGrowth, Units.Metric));
        Assert.Contains("shoot, in", Words1(SeasonCharts.ShootGrowth, Units.Us));
        Assert.Contains("gal transpired", Words1(SeasonCharts.Water, Units.Us));
    }

    /// <summary>A loss hangs below zero: the ticks of the axis go below it, and gains keep their height above it.</summary>
    [Fact]
    public void LossesHangBelowZero()
    {
        var day = InventedSeason.Veraison;
        var full = InventedSeason.Full();
        var season = full with
        {
            Days = [.. full.Days.Where(d => d.Date == day)],
            LeafAges = [new(day, 0, 10, 1, 1, -30, 0.5), new(day, 60, 70, 1, 1, 40, 0.5)],
        };
        using var bitmap = SKBitmap.Decode(SeasonCharts.All(season, InventedSeason.Scenario())[0].Png);
        var young = Rows(bitmap, ChartStyle.AgeClassOf(5).Rgb);
        var old = Rows(bitmap, ChartStyle.AgeClassOf(65).Rgb);
        Assert.True(young.First > old.Last, "the loss lies under the gain");

        // Seams and smoothed edges take about a pixel from each.
        Assert.Equal(30.0 / 40, (double)(young.Last - young.First) / (old.Last - old.First), 0.02);
    }

    private static (int First, int Last) Rows(SKBitmap bitmap, uint rgb)
    {
        // The column through the middle of the field, left of the key with its swatches of the same colors.
        var rows = Enumerable.Range(0, bitmap.Height)
            .Where(y => Enumerable.Range(500, 200).Count(x => ((uint)bitmap.GetPixel(x, y) & 0xFFFFFF) == rgb) > 50)
            .ToList();
        return (rows[0], rows[^1]);
    }

    private static IReadOnlyList<ChartPicture> Pictures(string name, Units units) =>
        InventedSeason.Pictures(name, Cases[name](), units);

    private static void IsDrawn(ChartPicture picture)
    {
        using var bitmap = SKBitmap.Decode(picture.Png);
        Assert.Equal((2 * ChartSize.Wide.Width, 2 * ChartSize.Wide.Height), (bitmap.Width, bitmap.Height));
        Assert.Equal(ChartStyle.Paper, (uint)bitmap.GetPixel(0, 0) & 0xFFFFFF);

        // The title alone inks about 0.3 % of the picture.
        var inked = bitmap.Pixels.Count(p => ((uint)p & 0xFFFFFF) != ChartStyle.Paper);
        Assert.True(inked > 0.002 * bitmap.Width * bitmap.Height, $"{picture.Stem}: {inked} pixels");
    }

    private static SeasonResult OneDay(DateOnly day)
    {
        var full = InventedSeason.Full();
        return full with
        {
            Days = [.. full.Days.Where(d => d.Date == day)],
            LeafAges = [.. full.LeafAges.Where(d => d.Date == day)],
        };
    }

    private static SeasonResult NotFinite()
    {
        var full = InventedSeason.Full();
        var spoilt = new HashSet<int> { 0, 40, 41, 120, 121, 122, 230, full.Days.Count - 1 };
        return full with
        {
            Days =
            [
                .. full.Days.Select((d, i) => !spoilt.Contains(i) ? d : d with
                {
                    ShootLengthCm = double.NaN,
                    NodesPerShoot = double.PositiveInfinity,
                    SugarBrix = d.SugarBrix is null ? null : double.NaN,
                    RipeningCapacityGPerKgD = double.NegativeInfinity,
                    FractionParAbsorbed = double.NaN,
                    SoilWaterFraction = double.NaN,
                    TranspirationLPerVine = double.NaN,
                    LeafAreaM2PerVine = double.NaN,
                }),
            ],
            LeafAges = [.. full.LeafAges.Select((r, i) => i % 7 > 0 ? r : r with { LeafAreaM2PerVine = double.NaN, NetAssimilationGCo2PerVine = double.PositiveInfinity })],
            Summary = full.Summary with { RipeningCapacityGPerKgD = double.NaN },
        };
    }

    private static List<string> Words(string svg) =>
        [.. XDocument.Parse(svg).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];

    private static double Place(XElement text) => double.Parse(text.Attribute("x")!.Value, CultureInfo.InvariantCulture);
}
