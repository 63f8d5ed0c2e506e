using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Tests.Charts;
using CanopySim.Parameters;
using CanopySim.Results;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Files.Tests.Report;

public partial class ReportPageTest
{
    private const string Attack = "</title></style><script>alert('1')</script><img src=x onerror=\"alert(2)\">&amp;";

    private static readonly UnderstoodValue[] Understood =
    [
        new("site.latitude", "45.2 deg", Mark.Given, ""),
        new("carbon.root_share", "0.31", Mark.Published, "a handbook, table 3"),
        new("leaf.floor", "0.01 mol m⁻² s⁻¹", Mark.Recalled, "a paper"),
        new("fruit.loading", "14.5 mg/d", Mark.Fitted, "22 Brix in September"),
        new("cultivar.veraison_sum", "900 degC d", Mark.Assumed, ""),
        new("fruit.stalk_share", "0.05", Mark.CommonPractice, ""),
        new("rows.area", "3.6 m2", Mark.Derived, "2.4 m × 1.5 m"),
    ];

    [Fact]
    public void ItOpensWithWhichLeavesFedTheFruitAndHowMuchTheyCouldSend()
    {
        var season = WithCapacity(4.13);
        Assert.Equal(
            "These leaves fed the fruit: those 60 to 100 days old gave 59 % of the sugar; the leaves could send 4.1 g of sugar a day to each kilogram of fruit.",
            Sentence(Page(season)));

        // 4.13 g/kg × 0.45359237 kg/lb = 1.87 g/lb.
        Assert.EndsWith(
            "the leaves could send 1.9 g of sugar a day to each pound of fruit (4.1 g to each kilogram).",
            Sentence(Page(season, Units.Us)));
        Assert.Matches("<main>\\s*<section>\\s*<h1>", Page(season));
    }

    [Fact]
    public void WorkIsToldWithWhatWasNotAsPlannedAndWhatToHeed()
    {
        Assert.DoesNotContain("<h2>Work in the canopy</h2>", Page(InventedSeason.Full()));
        var full = InventedSeason.Full();
        var season = full with
        {
            Work = [new WorkDone(new DateOnly(2023, 7, 1), "sprays", $"sprayed: {Attack}", 0, 3, 41, 1.5, 283.5)],
            Summary = full.Summary with { Warnings = ["Topping met <nothing>."], Cautions = ["Follow the label."] },
        };
        var page = Page(season, Units.Us);
        Assert.Contains("<h2>Work in the canopy</h2>", page);
        Assert.Contains("1 July 2023", page);
        // 1.5 m² = 16.15 ft²; 283.5 g = 10.0 oz.
        Assert.Contains("<td>3</td><td>41</td><td>16.15 ft²</td><td>10 oz</td>", page);
        Assert.Contains("<h3>Not as planned</h3>\n<ul>\n<li>Topping met &lt;nothing&gt;.</li>", page);
        Assert.Contains("<li>Follow the label.</li>", page);
        Assert.DoesNotContain("<script", page);
        Assert.Contains("<p>Nothing was done.</p>", Page(season with { Work = [] }));
    }

    [Fact]
    public void WhatWasNotReachedIsSaidInsteadOfAnAnswer()
    {
        Assert.Equal(
            "No leaves ripened fruit: veraison was not reached before the season ended on 1 August 2023 (weather ended); the vine had bloomed on 28 May 2023.",
            Sentence(Page(InventedSeason.EndedOn(InventedSeason.Veraison.AddDays(-1)))));
        Assert.Equal(
            "No leaves ripened fruit: bloom was not reached before the season ended on 27 May 2023 (weather ended); the buds had broken on 3 April 2023.",
            Sentence(Page(InventedSeason.EndedOn(InventedSeason.Bloom.AddDays(-1)))));
        Assert.Equal(
            "No leaves ripened fruit: the buds had not broken when the season ended on 31 December 2022 (weather ended).",
            Sentence(Page(InventedSeason.Empty())));
        Assert.Equal("No leaves fed fruit this season: the vine carried none.", Sentence(Page(InventedSeason.WithoutFruit())));
        Assert.DoesNotContain("<h2>Which leaves fed", Page(InventedSeason.WithoutFruit()));
        Assert.Contains("<h2>Which leaves fed", Page(InventedSeason.Full()));
    }

    [Theory]
    [InlineData("harvest", "harvested")]
    [InlineData("killing_frost", "killing frost")]
    [InlineData("leaf_fall", "leaf fall")]
    [InlineData("season_over", "the last day of the season or of the weather")]
    [InlineData("until", "the last day that was asked for")]
    public void TheEndOfTheSeasonHasWords(string reason, string words)
    {
        var full = InventedSeason.Full();
        Assert.Contains(
            $"How the season ended: {words}.",
            Page(full with { Summary = full.Summary with { EndReason = reason } }));
    }

    [Fact]
    public void RipenessIsSaidWithItsDay()
    {
        Assert.Contains("Ripe on 17 September 2023: the fruit reached the target of 22 Brix, 46 days after veraison.", Page(InventedSeason.Full()));
        var unripe = InventedSeason.EndedOn(InventedSeason.Ripe.AddDays(-20));
        var brix = unripe.Summary.Harvest!.SugarBrix!.Value.ToString("F1", CultureInfo.InvariantCulture);
        Assert.Contains(
            $"The target of 22 Brix was not reached: the fruit stood at {brix} Brix when the season ended on 28 August 2023 (weather ended).",
            Page(unripe));
    }

    /// <summary>Numbers of the page are those of the result, to half of the last digit shown.</summary>
    [Fact]
    public void TheTablesHoldTheNumbersOfTheResult()
    {
        var season = InventedSeason.Full();
        var (cells, summary) = (Cells(Page(season)), season.Summary);
        var (canopy, harvest, totals) = (summary.Canopy!, summary.Harvest!, summary.Season);
        Holds("Shoots a vine", canopy.ShootsPerVine, "");
        Holds("Shoots per m of canopy", canopy.ShootsPerM, "");
        Holds("Nodes a shoot", canopy.NodesPerShoot, "");
        Holds("Length of a shoot", canopy.ShootLengthCm, "cm");
        Holds("Leaf area of a shoot's own leaves", canopy.PrimaryLeafAreaPerShootCm2, "cm²");
        Holds("Leaf area of its laterals", canopy.LateralLeafAreaPerShootCm2, "cm²");
        Holds("Leaf area a vine", canopy.LeafAreaM2PerVine, "m²");
        Holds("Leaf area along the canopy", canopy.LeafAreaM2PerM, "m²/m");
        Holds("Leaf layers in the fruit zone", canopy.LeafLayerNumber, "");
        Holds("Gaps in the fruit zone", 100 * canopy.GapFraction, "%");
        Holds("Leaves inside the canopy", 100 * canopy.InteriorLeafFraction, "%");
        Holds("Clusters inside the canopy", 100 * canopy.InteriorClusterFraction!.Value, "%");
        Holds("Yield a vine", harvest.YieldKgPerVine, "kg");
        Holds("Yield of the block", harvest.YieldTPerHa, "t/ha");
        Holds("Sugar", harvest.SugarBrix!.Value, "Brix");
        Holds("Leaf area for each weight of fruit", harvest.LeafAreaM2PerKgFruit!.Value, "m²/kg");
        Holds("Prunings a vine", harvest.PruningsKgPerVine, "kg");
        Holds("Yield to prunings", harvest.YieldToPrunings!.Value, "");
        Holds("CO₂ gained by the leaves, nights included", totals.NetAssimilationKgCo2PerVine, "kg");
        Holds("CO₂ given off by the rest of the vine", totals.RespirationKgCo2PerVine, "kg");
        Holds("Water transpired", totals.TranspirationLPerVine, "L");
        Holds("PAR (light for photosynthesis) taken up", totals.AbsorbedParMolPerVine, "mol");
        Holds("Ripening capacity, mean from veraison on", summary.RipeningCapacityGPerKgD!.Value, "g/kg a day");
        Holds("Nodes at bloom", summary.NodesAtBloom!.Value, "");
        foreach (var share in summary.RipeningCarbonByLeafAge) Holds($"{share.FromD} to {share.ToD} days", 100 * share.Share, "%");
        Assert.Equal(["3.1 × 10⁻¹²"], cells["Light that the balance does not account for, at most"]);
        Assert.Equal(["5912"], cells["Leaves, at most"]);

        void Holds(string name, double expected, string unit)
        {
            var parts = Assert.Single(cells[name]).Split(' ', 2);
            Assert.Equal(unit, parts.Length > 1 ? parts[1] : "");
            var decimals = parts[0].Contains('.') ? parts[0].Length - parts[0].IndexOf('.') - 1 : 0;
            var shown = double.Parse(parts[0].Replace('−', '-'), CultureInfo.InvariantCulture);
            Assert.True(Math.Abs(shown - expected) <= (0.5 * Math.Pow(10, -decimals)) + 1e-9, $"{name}: {shown}, not {expected}");
        }
    }

    [Fact]
    public void StagesStandBesideThePublishedSums()
    {
        var cells = Cells(Page(InventedSeason.Full()));
        Assert.Equal(["28 May 2023", "31 May 2023", "3 days earlier"], cells["Bloom"]);
        Assert.Equal(["2 August 2023", "2 August 2023", "same day"], cells["Veraison"]);
        Assert.Equal(["17 September 2023", "–", "–"], cells["Ripe: 22 Brix"]);
        var cut = Cells(Page(InventedSeason.EndedOn(InventedSeason.Bloom)));
        Assert.Equal(["28 May 2023", "–", "–"], cut["Bloom"]);
        Assert.Equal(["–", "–", "–"], cut["Veraison"]);
    }

    [Fact]
    public void UnitsOfTheUnitedStatesAreConvertedNotRelabelled()
    {
        var cells = Cells(Page(InventedSeason.Full(), Units.Us));
        Assert.Equal(["52 in"], cells["Length of a shoot"]);
        Assert.Equal(["87.83 ft²"], cells["Leaf area a vine"]);
        Assert.Equal(["7.65 lb"], cells["Yield a vine"]);
        Assert.Equal(["161 gal"], cells["Water transpired"]);
        Assert.Equal("1620 °F d", cells["cultivar.veraison_sum"][0]);
        Assert.Equal("38.8 ft²", cells["rows.area"][0]);
        Assert.Contains("above 43.7 °F", Page(InventedSeason.Full(), Units.Us));
        Assert.DoesNotContain(cells.Values.SelectMany(v => v), v => v.EndsWith(" cm") || v.EndsWith(" kg") || v.EndsWith(" m²"));
    }

    [Fact]
    public void NoTextOfTheUserBecomesMarkup()
    {
        var full = InventedSeason.Full();
        var season = full with
        {
            Summary = full.Summary with
            {
                Scenario = Attack,
                EstimatedInputs = [Attack],
                EndReason = Attack,
                Quality = Attack,
                ThermalTime = new ThermalTimeBasis(6.5, Attack),
                Dates = full.Summary.Dates with { TargetSugar = null },
            },
        };
        ChartPicture[] pictures = [new("x", Attack, Attack, [1, 2, 3], "", "")];
        var page = ReportPage.Html(
            season, InventedSeason.Scenario(Attack, Attack), Units.Metric, [new(Attack, Attack, Mark.Given, Attack)], pictures);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch("<[^>]*onerror=\"", page);
        Assert.Equal(1, Regex.Count(page, "</style>"));
        Assert.Equal(1, Regex.Count(page, "</title>"));
        Assert.Contains("&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;", page);
        Assert.Contains("&amp;amp;", page);
        IsBalanced(page);
    }

    [Theory]
    [InlineData("plain", "\"plain\"")]
    [InlineData("a\"b", "\"a\\000022b\"")]
    [InlineData("</style>", "\"\\00003C\\00002Fstyle\\00003E\"")]
    [InlineData("Côte, 3", "\"Côte\\00002C\\0000203\"")]
    public void TheFootIsAStringOfCss(string name, string css)
    {
        var full = InventedSeason.Full();
        var page = Page(full with { Summary = full.Summary with { Scenario = name } });
        Assert.Contains($"@bottom-left {{ content: {css[..^1]}", page);
    }

    [Fact]
    public void ThePageNeedsNothingButItself()
    {
        var page = Page(InventedSeason.Full());
        Assert.DoesNotContain("<script", page);
        Assert.DoesNotContain("<link", page);
        Assert.DoesNotContain("http://", page);
        Assert.DoesNotContain("https://", page);
        Assert.DoesNotContain("@import", page);
        Assert.DoesNotContain("url(", page);
        Assert.All(Sources().Matches(page), m => Assert.StartsWith("data:image/svg+xml;base64,", m.Groups[1].Value));
        Assert.Contains("name=\"viewport\"", page);
        Assert.Contains("prefers-color-scheme: dark", page);
        Assert.Contains("@media print", page);
    }

    [Fact]
    public void EveryChartIsThereWithItsWords()
    {
        var season = InventedSeason.Full();
        var pictures = InventedSeason.Pictures("full", season, Units.Metric);
        var page = Page(season);
        var sources = Sources().Matches(page).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(2 * pictures.Count, sources.Count);
        var svgs = sources.Select(s => Encoding.UTF8.GetString(Convert.FromBase64String(s[(s.IndexOf(',') + 1)..]))).ToHashSet();
        Assert.All(svgs, s => XDocument.Parse(s));
        foreach (var picture in pictures)
        {
            Assert.Contains(picture.Svg, svgs);
            Assert.Contains(picture.NarrowSvg, svgs);
            Assert.Contains($"alt=\"{WebUtility.HtmlEncode($"{picture.Title}. {picture.Caption}").Replace("&#178;", "²").Replace("&#176;", "°")}\"", page);
        }

        // The picture that shows why comes first, before any number.
        Assert.True(page.IndexOf(pictures[0].Title, StringComparison.Ordinal) < page.IndexOf("<table", StringComparison.Ordinal));
    }

    [Fact]
    public void ValuesStandWithHowSureTheyAre()
    {
        var page = Page(InventedSeason.Full());
        var cells = Cells(page);
        string[] words = ["given", "published", "from memory", "fitted", "assumed", "common practice, no source", "derived"];
        string[] shown = ["45.2 °", "0.31", "0.01 mol m⁻² s⁻¹", "14.5 mg/d", "900 °C d", "0.05", "3.6 m²"];
        foreach (var (value, mark, text) in Understood.Zip(words, shown))
            Assert.Equal([text, mark, value.Source], cells[value.Key]);
        Assert.Contains("<li>global radiation from the temperature range</li>", page);
        Assert.Contains("3 gaps were filled.", page);
        Assert.Contains("Part of the weather is estimated", page);
    }

    [Fact]
    public void TheCanopyInPerspectiveStandsWithItsKeyOrSaysWhyItDoesNot()
    {
        var season = InventedSeason.Full();
        var drawn = new ChartPicture("canopy-in-perspective", "In perspective", "A row & its age.", [1, 2], "", "");
        var page = Report(new CanopyPerspective(drawn, null));
        Assert.Contains("<figure class=\"scene\">", page);
        Assert.Contains("<img class=\"only\" src=\"data:image/png;base64,AQI=\" "
            + "alt=\"In perspective. A row &amp; its age.\">", page);
        Assert.Contains("Leaf age, days:", page);
        var without = Report(new CanopyPerspective(null, "Install it."));
        Assert.Contains("There is no picture of the canopy in perspective here. Install it.", without);
        Assert.DoesNotContain("figure class=\"scene\"", without);
        Assert.DoesNotContain("in perspective", Report(CanopyPerspective.None));

        string Report(CanopyPerspective perspective) => ReportPage.Html(
            season, InventedSeason.Scenario(), Units.Metric, Understood, [], null, null, perspective);
    }

    [Fact]
    public void CautionsAreCarried()
    {
        var page = Page(InventedSeason.Empty());
        Assert.Contains("A model result is advice to check in the row, not an instruction.", page);
        Assert.Contains("follow the product label and local rules, keep re-entry and pre-harvest intervals", page);
        Assert.Contains("Leave licensed work to licensed people.", page);
    }

    [Fact]
    public void TheFootNamesBlockAndDay()
    {
        var season = InventedSeason.Full();
        Assert.Contains("<footer>Terrace block, season of 2023, ended 25 October 2023</footer>", Page(season));
        var printed = ReportPage.Html(season, InventedSeason.Scenario(), Units.Metric, [], [], new DateOnly(2024, 3, 5));
        Assert.Contains("<footer>Terrace block, season of 2023, report of 5 March 2024</footer>", printed);
    }

    [Fact]
    public void ThePageIsTheSameTwiceAndItsElementsClose()
    {
        SeasonResult[] seasons =
            [InventedSeason.Full(), InventedSeason.Empty(), InventedSeason.WithoutFruit(), InventedSeason.EndedOn(InventedSeason.Bloom)];
        foreach (var season in seasons)
        {
            var page = Page(season);
            Assert.Equal(page, Page(season));
            Assert.DoesNotContain("NaN", WithoutPictures(page));
            IsBalanced(page);
        }
    }

    private static SeasonResult WithCapacity(double capacity)
    {
        var full = InventedSeason.Full();
        return full with { Summary = full.Summary with { RipeningCapacityGPerKgD = capacity } };
    }

    /// <summary>The page with the pictures of the full season, whichever season it tells of: they are tested by themselves.</summary>
    private static string Page(SeasonResult season, Units units = Units.Metric) => ReportPage.Html(
        season, InventedSeason.Scenario(), units, Understood, InventedSeason.Pictures("full", InventedSeason.Full(), Units.Metric))
        .Replace('\u00A0', ' ');

    private static string Sentence(string page) => WebUtility.HtmlDecode(Regex.Match(page, "<h1>(.*?)</h1>").Groups[1].Value);

    // Tables of the assessment name some rows as earlier tables do: the first counts here.
    private static Dictionary<string, string[]> Cells(string page) => Rows().Matches(page).DistinctBy(row => row.Groups[1].Value).ToDictionary(
        row => WebUtility.HtmlDecode(row.Groups[1].Value),
        row => Regex.Matches(row.Groups[2].Value, "<td>(.*?)</td>").Select(c => WebUtility.HtmlDecode(c.Groups[1].Value)).ToArray());

    private static string WithoutPictures(string page) => Regex.Replace(page, "base64,[A-Za-z0-9+/=]+", "");

    /// <summary>Every element is closed where it belongs; the few that never close aside.</summary>
    private static void IsBalanced(string page)
    {
        string[] neverClosed = ["meta", "img", "source"];
        var open = new Stack<string>();
        foreach (Match tag in Regex.Matches(WithoutPictures(page), "<(/?)([a-z][a-z0-9]*)[^>]*>"))
        {
            var name = tag.Groups[2].Value;
            if (neverClosed.Contains(name)) continue;
            if (tag.Groups[1].Length == 0) open.Push(name);
            else Assert.Equal(open.Pop(), name);
        }

        Assert.Empty(open);
    }

    [GeneratedRegex("<tr><th scope=\"row\">(.*?)</th>(.*?)</tr>")]
    private static partial Regex Rows();

    [GeneratedRegex(" (?:src|srcset)=\"([^\"]*)\"")]
    private static partial Regex Sources();
}
