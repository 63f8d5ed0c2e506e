using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CanopySim.Files.Charts;
using CanopySim.Files.Comparison;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Tests.Charts;
using CanopySim.Parameters;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Files.Tests.Comparison;

public class ComparisonPageTest
{
    private const string Attack = "</title></style><script>alert('1')</script><img src=x onerror=\"alert(2)\">&amp;";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void NoTextOfTheUserBecomesMarkup()
    {
        var options = new[]
        {
            ComparisonTest.Option(Attack, InventedSeason.Full(),
                new UnderstoodValue("a.b", Attack, Mark.Given, Attack, Help: Attack)),
            ComparisonTest.Option("Other", InventedSeason.Full(), new UnderstoodValue("a.b", "1", Mark.Given, "")),
        };
        ChartPicture[] views = [new("x", Attack, Attack, [1, 2, 3], "", "")];
        var page = ComparisonPage.Html(
            new ComparisonReport(options, [new(ComparisonCharts.Light, Attack, Attack, [1, 2, 3], "", "")],
            [views, []], Units.Metric));
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch("<[^>]*onerror=\"", page);
        Assert.Equal(1, Regex.Count(page, "</style>"));
        Assert.Equal(1, Regex.Count(page, "</title>"));
        Assert.Contains(WebUtility.HtmlEncode("<script>alert('1')</script>"), page);
    }

    [Fact]
    public void ItNeedsNothingButItselfAndEveryChartIsThereWithItsWords()
    {
        var options = new[] { ComparisonTest.Option("Hedge", InventedSeason.Full()),
            ComparisonTest.Option("Curtain", InventedSeason.WithoutFruit()) };
        var charts = ComparisonCharts.All(options, Units.Metric);
        var page = ComparisonPage.Html(new ComparisonReport(options, charts, [[], []], Units.Metric));
        Assert.DoesNotContain("http://", page);
        Assert.DoesNotContain("https://", page);
        Assert.DoesNotContain("url(", page);
        Assert.Equal(7, charts.Count);
        foreach (var chart in charts)
        {
            var words = WebUtility.HtmlEncode($"{chart.Title}. {chart.Caption}").Replace("&#178;", "²");
            Assert.Contains($"alt=\"{words}\"", page);
            Assert.Contains(Convert.ToBase64String(Encoding.UTF8.GetBytes(chart.Svg)), page);
        }
    }

    /// <summary>Sections of a season's own report stand side by side, each option with its own numbers.</summary>
    [Fact]
    public void CanopySheetFruitBudsAndWorkStandSideBySide()
    {
        var full = InventedSeason.Full();
        var light = full.Summary.FruitLight!;
        var curtain = full with
        {
            Summary = full.Summary with
            {
                FruitLight = light with { Sides = [light.Sides[0] with { ParMolM2D = 7.7 }, light.Sides[1]] },
                NextYear = full.Summary.NextYear! with { Fruitfulness = 0.81 },
                Warnings = ["nothing to <cut>"],
            },
            Assessment = full.Assessment with
            {
                CanopySheet = [full.Assessment.CanopySheet[0] with { Value = 9.5 }, .. full.Assessment.CanopySheet.Skip(1)],
            },
            Work = [new WorkDone(new DateOnly(2023, 6, 1), "topping", "shoots topped", 12, 3, 45, 1.23, 60)],
        };
        var page = ComparisonPage.Html(new ComparisonReport(
            [ComparisonTest.Option("Hedge", full), ComparisonTest.Option("Curtain", curtain)], [], [[], []],
            Units.Metric));
        Assert.Contains(
            "<th scope=\"row\">Shoots along the canopy<br><span>What it means.</span></th>"
                + "<td>10 to 20 per m<br><span>an invented handbook (published)</span></td>"
                + "<td>16.3 per m<br><span>within</span></td><td>9.5 per m<br>", page);
        Assert.Contains("<th scope=\"row\">Hedge, west side</th><td>21</td><td>4.4</td>", page);
        Assert.Contains("<th scope=\"row\">Curtain, west side</th><td>21</td><td>7.7</td>", page);
        Assert.Contains("<th scope=\"row\">Curtain, east side</th><td>44.1 °C</td><td>0.0</td>", page);
        Assert.Contains("Fruit that was shaded and is bared at once burns most", page);
        Assert.Contains("share of the best</th><td>62 %</td><td>81 %</td>", page);
        Assert.Contains("<th scope=\"row\">Hedge</th><td>–</td><td>nothing</td>", page);
        Assert.Contains("<th scope=\"row\">Curtain</th><td>1 June 2023</td><td>shoots topped</td><td>12</td>", page);
        // On the first page and where the work is told.
        Assert.Equal(2, Regex.Count(page, "<li>Curtain: nothing to &lt;cut&gt;</li>"));
    }

    /// <summary>What was reached by none is said in words, not left as an empty table.</summary>
    [Fact]
    public void WhatNoOptionReachedIsSaid()
    {
        var spring = InventedSeason.EndedOn(InventedSeason.Bloom.AddDays(-5));
        var value = new UnderstoodValue("a.b", "1", Mark.Given, "");
        var page = ComparisonPage.Html(new ComparisonReport(
            [ComparisonTest.Option("A", spring, value), ComparisonTest.Option("B", spring, value)], [], [[], []],
            Units.Metric));
        Assert.Contains("No option reached veraison, so there is no canopy to hold against published ranges.", page);
        Assert.Contains("No option reached veraison with fruit", page);
        Assert.Contains("A: bloom was not reached, so no buds were laid down.", page);
        Assert.DoesNotMatch("<tbody>\\s*</tbody>", page);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(12)]
    public void EveryLineHasItsNameWithinTheChart(int count)
    {
        var options = Enumerable.Range(1, count).Select(i => ComparisonTest.Option($"Option{i}", InventedSeason.Full()))
            .ToList();
        foreach (var chart in ComparisonCharts.All(options, Units.Metric))
        {
            foreach (var svg in (string[])[chart.Svg, chart.NarrowSvg])
            {
                var texts = XDocument.Parse(svg).Descendants(Svg + "text").ToList();
                foreach (var option in options)
                {
                    // Once a field: light on the fruit has one a side, of which the first has all names.
                    var labels = texts.Where(text => text.Value == option.Name).ToList();
                    var fields = chart.Stem == ComparisonCharts.FruitLight && count <= 4 ? 2 : 1;
                    Assert.Equal(fields, labels.Count);
                    Assert.All(labels, label => Assert.InRange(BaselineOf(label), 10, ChartSize.Wide.Height));
                }

                // No two names over each other.
                var baselines = texts.Where(text => text.Value.StartsWith("Option", StringComparison.Ordinal))
                    .Select(BaselineOf).Order().ToList();
                Assert.All(baselines.Zip(baselines.Skip(1)), pair => Assert.True(pair.Second - pair.First > 12));
            }
        }
    }

    [Fact]
    public void LinesOfOptionsCanBeReadOnPaper()
    {
        Assert.All(ChartStyle.OptionLines, rgb => Assert.True(Contrast(rgb, ChartStyle.Paper) >= 4.5, $"{rgb:X6}"));

        // Relative luminance and contrast: WCAG 2.1.
        static double Contrast(uint dark, uint light) => (Luminance(light) + 0.05) / (Luminance(dark) + 0.05);

        static double Luminance(uint rgb) =>
            (0.2126 * Linear((byte)(rgb >> 16))) + (0.7152 * Linear((byte)(rgb >> 8))) + (0.0722 * Linear((byte)rgb));

        static double Linear(byte value) =>
            value / 255.0 is var share && share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }

    private static double BaselineOf(XElement text)
    {
        var y = double.Parse(text.Attribute("y")?.Value ?? "0", CultureInfo.InvariantCulture);
        foreach (var transform in text.AncestorsAndSelf().Select(element => element.Attribute("transform")?.Value)
            .Where(value => value is not null))
        {
            var moved = Regex.Match(transform!, "translate\\(([-0-9.]+)[ ,]+([-0-9.]+)\\)");
            if (moved.Success) y += double.Parse(moved.Groups[2].Value, CultureInfo.InvariantCulture);
        }

        return y;
    }
}
