using System.Net;
using System.Text.RegularExpressions;
using CanopySim.Assessment;
using CanopySim.Files.Charts;
using CanopySim.Files.Report;
using CanopySim.Files.Results;
using CanopySim.Files.Tests.Charts;
using CanopySim.Results;
using Xunit;

namespace CanopySim.Files.Tests.Report;

public sealed partial class AssessmentSectionsTest : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    // 1 m = 3.28084 ft, 1 in = 2.54 cm, 1 lb = 0.45359237 kg.
    [Theory]
    [InlineData(Units.Metric, "16.3 per m", "10 to 20 per m", "132 cm", "6.1 m²/m³", "0.41 kg/m", "1.83 ± 0.14", "21 ± 3 %", "46.3 °C")]
    [InlineData(Units.Us, "5.0 per ft", "3 to 6.1 per ft", "51.8 in", "1.9 ft²/ft³", "0.28 lb/ft", "1.83 ± 0.14", "21 ± 3 %", "115.3 °F")]
    public void TheSheetAndTheFruitStandInTheReadersUnits(Units units, params string[] texts)
    {
        var cells = Cells(Page(InventedSeason.Full(), units));
        Assert.All(texts, text => Assert.Contains(text, cells));
        Assert.Contains("judge in the row", cells);
        Assert.Contains("not reached", cells);
        Assert.Contains("an invented handbook (published)", cells);
    }

    [Fact]
    public void SentencesComeFirst()
    {
        var page = Text(Page(InventedSeason.Full(), Units.Metric));
        Assert.Contains("3 of 6 measures lie within their published range. Outside: length of a shoot, 132 cm, is above 60 to 90 cm; leaf layers in the fruit zone, 1.83, is above 1 to 1.5; prunings along the canopy, 0.41 kg/m, is below 0.5 to 1 kg/m.", page);
        Assert.Contains("46 of the 60 points that the model can see", page);
        Assert.Contains("must be judged in the row", page);
        Assert.Contains("received 4.3 mol of PAR (light for photosynthesis) a day on each square meter of their surface, 9 % of what falls on a level place over the canopy. 47 % of it came before noon, 53 % after.", page);
        Assert.Contains("reached 46 °C on 14 July 2023, on the west side. On the west side some fruit was at 45 °C or more, where it browns, on 4 days.", page);
        Assert.Contains("would make next year's shoots 62 % as fruitful as the best; warmth was the shorter of the two.", page);
        Assert.Contains("Fruit that was shaded and is bared at once burns most", page);
        Assert.Contains("follow local advice for your cultivar and site", page);
    }

    [Fact]
    public void WithoutFruitThereIsNoHeatAndBeforeVeraisonNoSheet()
    {
        var bare = Page(InventedSeason.WithoutFruit(), Units.Metric);
        Assert.DoesNotContain("<h2>Heat on exposed fruit", bare);
        var spring = Page(InventedSeason.EndedOn(InventedSeason.Bloom.AddDays(-5)), Units.Metric);
        Assert.DoesNotContain("<h2>Canopy sheet", spring);
        Assert.DoesNotContain("<h2>Next year", spring);
    }

    [Fact]
    public void TablesHaveTheirColumns()
    {
        var target = Path.Combine(_folder, "results");
        using (var folder = ResultsFolder.Begin(target))
        {
            AssessmentCsv.Write(folder.File, InventedSeason.Full().Assessment);
            folder.Commit();
        }

        var sheet = File.ReadAllLines(Path.Combine(target, AssessmentCsv.SheetFile));
        Assert.Equal("item,name,at,wall,value,unit,sampling_error,published_low,published_high,verdict,mark,source,meaning", sheet[0]);
        Assert.Equal("leaf_layers,Leaf layers in the fruit zone,veraison,all,1.83,1,0.14,1,1.5,above,published,an invented handbook,What it means.", sheet[4]);
        Assert.Equal("leaf_color,Color of the leaves,veraison,all,,,,,,judge in the row,published,an invented handbook,What it means.", sheet[8]);
        var heat = File.ReadAllLines(Path.Combine(target, AssessmentCsv.HeatFile));
        Assert.StartsWith("2023-05-28,1,left,west,afternoon,", heat[1]);
    }

    [Fact]
    public void ASummaryHasTheAssessment()
    {
        var text = SummaryJson.Text(InventedSeason.Full().Summary, new InputHashes("aa", [], "cc"));
        using var json = System.Text.Json.JsonDocument.Parse(text);
        Assert.Equal(0.53, json.RootElement.GetProperty("fruit_light").GetProperty("afternoon_share").GetDouble());
        Assert.Equal("west", json.RootElement.GetProperty("fruit_heat").GetProperty("highest_side").GetString());
        Assert.Equal("east", json.RootElement.GetProperty("fruit_heat").GetProperty("sides")[1].GetProperty("facing").GetString());
        Assert.Equal(705, json.RootElement.GetProperty("next_year").GetProperty("noon_par_umol_m2_s").GetDouble());
        Assert.Equal(46, json.RootElement.GetProperty("canopy_score").GetProperty("points").GetInt32());
    }

    [Theory]
    [InlineData(SheetVerdict.Below, "below")]
    [InlineData(SheetVerdict.Within, "within")]
    [InlineData(SheetVerdict.Above, "above")]
    [InlineData(SheetVerdict.JudgeInRow, "judge in the row")]
    [InlineData(SheetVerdict.NotReached, "not reached")]
    public void EveryVerdictHasItsWord(SheetVerdict verdict, string word) => Assert.Equal(word, AssessmentCsv.VerdictOf(verdict));

    private static string Page(SeasonResult season, Units units) =>
        ReportPage.Html(season, InventedSeason.Scenario(), units, [], InventedSeason.Pictures("full", InventedSeason.Full(), units));

    private static List<string> Cells(string page) =>
        [.. CellPattern().Matches(page).Select(match => WebUtility.HtmlDecode(match.Groups[1].Value).Replace('\u00A0', ' '))];

    private static string Text(string page) => WebUtility.HtmlDecode(page).Replace('\u00A0', ' ');

    [GeneratedRegex("<td>(.*?)</td>")]
    private static partial Regex CellPattern();
}
