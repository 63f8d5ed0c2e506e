using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CanopySim.Files.Charts;
using CanopySim.Files.Forecast;
using CanopySim.Files.Tests.Charts;
using Xunit;

namespace CanopySim.Files.Tests.Forecast;

public sealed partial class ForecastPageTest
{
    private static readonly Dictionary<Units, IReadOnlyList<ChartPicture>> Drawn =
        Enum.GetValues<Units>().ToDictionary(units => units, units => ForecastCharts.All(InventedForecast.Full(units)));

    [Fact]
    public void It_opens_with_the_day_of_ripeness_and_where_the_vines_stand()
    {
        var page = Text(Page(InventedForecast.Full()));
        Assert.StartsWith("Ripe (22 Brix) on 17 September 2023, 8 to 29 September in four seasons of five. On 20 June 2023 the vines have", page);
        Assert.Contains("Leaves 60 to 100 days old will give 59 % of the sugar.", page);
    }

    // What the first sentence is when ripeness is not sure.
    [Theory]
    [InlineData(0.0, null, null, null, "The fruit does not reach 22 Brix in any of 80 seasons ahead.")]
    [InlineData(0.3, "2023-09-20", null, null, "The fruit reaches 22 Brix in 30 % of 80 seasons ahead, so rather not.")]
    [InlineData(
        0.7, "2023-09-12", "2023-09-24", null,
        "Ripe (22 Brix) on 24 September 2023, on 12 September at the earliest in nine seasons of ten; 30 % do not get there.")]
    [InlineData(1.0, "2023-06-18", "2023-06-18", "2023-06-18", "Ripe since 18 June 2023: the fruit has reached 22 Brix.")]
    [InlineData(
        1.0, "2023-08-28", "2023-09-01", "2023-09-06",
        "Ripe (22 Brix) on 1 September 2023, 28 August to 6 September in four seasons of five.")]
    public void What_is_not_sure_is_said_so(double chance, string? p10, string? p50, string? p90, string sentence) =>
        Assert.Equal(sentence, ForecastSentences.Opening(InventedForecast.Full() with
        {
            Target = new StageOutlook("target sugar", Date(p10), Date(p50), Date(p90), chance),
        }));

    [Fact]
    public void Every_part_stands_in_its_section()
    {
        var page = Page(InventedForecast.Full());
        Assert.Equal(
            [
                "When", "Shoots and leaves", "Leaves that will feed the fruit", "What could still be done", "What the notes told",
                "Growing tip", "Leaf that sprays have not reached", "Powdery mildew", "What it rests on", "Before you act on this",
            ],
            Heading().Matches(page).Select(match => match.Groups[1].Value));
        var text = Text(page);
        Assert.Contains("take off 30 % of the clusters on 1 July 8 −4 d (−7 to −1) −28 % (−30 to −25) +31 % (+20 to +40)", text);
        Assert.Contains("it contradicts the plan.", text);
        Assert.Contains("mean length of 10 shoots on 16 June, 104 cm 118 ± 21 cm 107 ± 7 cm 67 %", text);
        Assert.Contains("mean length of a shoot on 30 May, 310 cm; the vines show 64 ± 5 cm", text);
        Assert.Contains("8.1 m² of leaf (7.0 to 9.3), 31 % of it younger than 60 days (20 % to 40 %)", text);
        Assert.Contains("8 September 10 % 15 September 46 % 22 September 71 %", text);
        Assert.Contains("follow the product label and local rules", text);
        Assert.Contains("The label stands above both.", text);
    }

    [Fact]
    public void What_there_is_nothing_of_leaves_no_empty_section()
    {
        var page = Page(InventedForecast.Full() with
        {
            Options = [],
            Notes = [],
            OddNotes = [],
            Tips = [],
            FeedingLeaves = [],
            AtVeraison = null,
            ChanceByWeek = [],
            Vine = InventedVine.Standing(isSprayed: false),
        });
        Assert.DoesNotContain("What could still be done", page);
        Assert.Contains("No note up to this day tells of size, stage or fruit", page);
        Assert.Contains("No tip was noted.", page);
        Assert.Contains("so no leaves feed any", page);
        Assert.Contains("No spray was noted or planned", page);
    }

    [Fact]
    public void Nothing_in_it_runs_or_is_fetched_and_names_are_no_markup()
    {
        var page = Page(InventedForecast.Full());
        Assert.Contains("default-src 'none'", page);
        Assert.DoesNotContain("<script", page);
        Assert.DoesNotContain("http", page.Replace("http-equiv", "", StringComparison.Ordinal));
        Assert.Contains("met &lt;nothing&gt;.", page);
    }

    [Theory]
    [InlineData(Units.Metric)]
    [InlineData(Units.Us)]
    public void Each_chart_is_drawn_wide_and_narrow_with_words_that_fit(Units units)
    {
        Assert.Equal(8, Drawn[units].Select(picture => picture.Stem).Distinct().Count());
        foreach (var picture in Drawn[units])
        {
            Assert.EndsWith(".", picture.Caption);
            Assert.DoesNotContain("NaN", picture.Caption);
            foreach (var text in (string[])[picture.Svg, picture.NarrowSvg])
            {
                var svg = XDocument.Parse(text).Root!;
                Assert.DoesNotContain("nan", text, StringComparison.OrdinalIgnoreCase);
                foreach (var word in svg.Descendants().Where(element => element.Name.LocalName == "text"))
                {
                    Assert.True((double)word.Attribute("font-size")! >= 12);
                    var place = word.Attribute("x")!.Value.Split([',', ' '])[0];
                    var end = double.Parse(place, CultureInfo.InvariantCulture) + ((double?)word.Attribute("textLength") ?? 0);
                    Assert.True(end <= (double)svg.Attribute("width")!, $"'{word.Value}' of {picture.Stem} ends at {end}");
                }
            }
        }
    }

    [Fact]
    public void Every_picture_of_the_page_has_its_words()
    {
        var page = Page(InventedForecast.Full());
        var alternatives = Alternative().Matches(page).Select(match => WebUtility.HtmlDecode(match.Groups[1].Value)).ToList();
        Assert.Equal(2 * Drawn[Units.Metric].Count, alternatives.Count);
        Assert.All(Drawn[Units.Metric], picture => Assert.Contains($"{picture.Title}. {picture.Caption}", alternatives));
    }

    // Before budbreak, on the day of budbreak, on the last day: nothing to draw is said, not thrown.
    [Theory]
    [InlineData("2023-02-01")]
    [InlineData("2023-04-03")]
    [InlineData("2023-04-05")]
    [InlineData("2023-09-30")]
    public void A_page_of_any_day_is_drawn(string date)
    {
        var day = Date(date)!.Value;
        var content = InventedForecast.Full() with
        {
            Vine = InventedVine.Standing(day, isSprayed: false),
            Tips = [],
            ShootLengthCm = [],
            LeafAreaM2PerVine = [],
            SugarBrix = [],
            ChanceOfTarget = [],
        };
        var page = ForecastPage.Html(content, ForecastCharts.All(content));
        Assert.DoesNotContain("NaN", page);
        Assert.Contains(day < InventedSeason.Budbreak ? "the buds have not broken" : "some vines have no shoots yet", page);
    }

    private static string Page(ForecastContent content) => ForecastPage.Html(content, Drawn[content.Units]);

    private static DateOnly? Date(string? text) => text is null ? null : DateOnly.Parse(text, CultureInfo.InvariantCulture);

    // The words of the body, one space between them.
    private static string Text(string page) => Spaces().Replace(
        WebUtility.HtmlDecode(Tag().Replace(page[page.IndexOf("<body>", StringComparison.Ordinal)..], " ")).Replace('\u00A0', ' '), " ").Trim();

    [GeneratedRegex("<h2>(.*?)</h2>")]
    private static partial Regex Heading();

    [GeneratedRegex("alt=\"(.*?)\"")]
    private static partial Regex Alternative();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("\\s+")]
    private static partial Regex Spaces();
}
