using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CanopySim.Runner.Tests.Browser;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>Several scenarios through the whole program.</summary>
[Collection(nameof(ComparedOnce))]
public sealed partial class CompareTests(CompareRuns runs)
{
    [Fact]
    public void Each_option_has_the_folder_that_season_gives_it()
    {
        var (compared, alone) = runs.Curtain;
        var names = Names(alone);
        Assert.Equal(names, Names(compared));
        foreach (var name in names)
        {
            // The views have the comparison's scale, and with them the report; the summary tells how long it took.
            if (name == "summary.json") Assert.Equal(WithoutSeconds(alone), WithoutSeconds(compared));
            else if (name != "report.html" && !name.StartsWith("charts/canopy-", StringComparison.Ordinal))
                Assert.True(File.ReadAllBytes(Path.Combine(alone, name)).AsSpan()
                    .SequenceEqual(File.ReadAllBytes(Path.Combine(compared, name))), $"{name} differs");
        }

        Assert.Contains("days.csv", names);
        Assert.Contains("charts/canopy-from-the-side.png", names);

        static List<string> Names(string folder) =>
            [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(folder, file)).Order(StringComparer.Ordinal)];

        static string WithoutSeconds(string folder)
        {
            var summary = JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "summary.json")))!.AsObject();
            Assert.True(summary.Remove("seconds"));
            return summary.ToJsonString();
        }
    }

    [Fact]
    public void The_table_has_a_row_an_option_with_the_numbers_of_its_summary()
    {
        var table = CsvRows.Read(Path.Combine(runs.Compared, "compare.csv"));
        Assert.Equal([CompareRuns.First, CompareRuns.Second], table.Column("option"));
        foreach (var (row, folder) in ((string[])["first-season-first-season", "first-season-curtain"]).Index()
            .Select(pair => (pair.Index, pair.Item)))
        {
            var summary = Summary(folder);
            foreach (var name in (string[])["harvest.sugar_brix", "harvest.yield_t_per_ha", "canopy.leaf_layer_number",
                "season.transpiration_l_per_vine", "checks.leaves_max"])
                Assert.Equal(At(summary, name).GetRawText(), table.Column(name).ElementAt(row));
            Assert.Equal(At(summary, "ripening_capacity_g_per_kg_d").GetDouble(),
                table.Numbers("ripening_capacity_g_per_kg_d").ElementAt(row));
            Assert.Equal(At(summary, "dates.veraison").GetString(), table.Column("dates.veraison").ElementAt(row));
            Assert.Equal("", table.Column("dates.target_sugar").ElementAt(row));
        }
    }

    /// <summary>
    /// Numbers of the page are those of <c>summary.json</c>, to half of the last digit shown, and so are differences.
    /// </summary>
    [Theory]
    [InlineData("Sugar at the end", "harvest.sugar_brix", "Brix")]
    [InlineData("Yield of the block", "harvest.yield_t_per_ha", "t/ha", 2)]
    [InlineData("Leaf area for each weight of fruit", "harvest.leaf_area_m2_per_kg_fruit", "m²/kg", 2)]
    [InlineData("Leaf area along the canopy", "canopy.leaf_area_m2_per_m", "m²/m", 2)]
    [InlineData("Leaf layers in the fruit zone", "canopy.leaf_layer_number", "", 2)]
    [InlineData("Gaps in the fruit zone", "canopy.gap_fraction", "%", 2, 100)]
    [InlineData("Ripening capacity, a day", "ripening_capacity_g_per_kg_d", "g/kg")]
    [InlineData("Ripening capacity, mean from veraison on", "ripening_capacity_g_per_kg_d", "g/kg a day")]
    [InlineData("Prunings a vine", "harvest.prunings_kg_per_vine", "kg", 2)]
    [InlineData("Nodes at bloom", "nodes_at_bloom", "")]
    [InlineData("Length of a shoot", "canopy.shoot_length_cm", "cm")]
    public void The_page_shows_the_numbers_of_the_summaries(string row, string key, string unit, int rows = 1,
        double factor = 1)
    {
        var summaries = new[] { Summary("first-season-first-season"), Summary("first-season-curtain") };
        var expected = summaries.Select(summary => factor * At(summary, key).GetDouble()).ToList();
        var found = Rows().Matches(File.ReadAllText(runs.Report))
            .Where(match => WebUtility.HtmlDecode(match.Groups[1].Value) == row).ToList();
        Assert.Equal(rows, found.Count);
        foreach (var match in found)
        {
            var cells = Cells().Matches(match.Groups[2].Value)
                .Select(cell => (Text: WebUtility.HtmlDecode(cell.Groups[1].Value),
                Below: WebUtility.HtmlDecode(cell.Groups[2].Value))).ToList();
            Assert.Equal(2, cells.Count);
            foreach (var (cell, value) in cells.Zip(expected)) Holds(cell.Text, value);
            if (cells[1].Below is { Length: > 0 } difference) Holds(difference == "same" ? "0"
                : difference, expected[1] - expected[0], isDifference: true);
        }

        void Holds(string text, double value, bool isDifference = false)
        {
            var parts = text.Split(' ', 2);
            if (!isDifference) Assert.Equal(unit, parts.Length > 1 ? parts[1] : "");
            var decimals = parts[0].Contains('.') ? parts[0].Length - parts[0].IndexOf('.') - 1 : 0;
            var shown = double.Parse(parts[0].Replace('−', '-'), NumberStyles.Float | NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture);
            // "same" stands where no digit that is shown differs.
            var digit = isDifference && shown == 0 ? 0.5 : 0.5 * Math.Pow(10, -decimals);
            Assert.True(Math.Abs(shown - value) <= digit + 1e-5, $"{row}: {text}, not {value}");
        }
    }

    [Fact]
    public void What_it_prints_fits_a_terminal_of_80_columns()
    {
        var lines = runs.Output.Split('\n');
        Assert.All(lines, line => Assert.True(line.Length <= 80, line));
        Assert.Contains(lines, line => line.Contains("does not reach 22 Brix", StringComparison.Ordinal));
        Assert.Contains(CompareRuns.First, lines);
        Assert.Contains(lines, line => line.StartsWith("  difference", StringComparison.Ordinal));
    }

    [Fact]
    public void The_page_says_what_differs_and_carries_the_cautions()
    {
        var page = File.ReadAllText(runs.Report);
        Assert.Contains($"<li>{CompareRuns.Second}: trellis, form hanging-curtain, there upright-hedge.</li>", page);
        Assert.Contains("All options had the same weather.", page);
        Assert.Contains("A model result is advice to check in the row, not an instruction.", page);
        Assert.DoesNotMatch("(src|href)=\"(https?:)?//", page);
    }

    private JsonElement Summary(string folder) =>
        JsonDocument.Parse(File.ReadAllBytes(Path.Combine(runs.Compared, folder, "summary.json"))).RootElement;

    private static JsonElement At(JsonElement element, string key) =>
        key.Split('.').Aggregate(element, (inner, name) => inner.GetProperty(name));

    [GeneratedRegex("<tr><th scope=\"row\">(.*?)</th>(.*?)</tr>")]
    private static partial Regex Rows();

    [GeneratedRegex("<td>(.*?)(?:<br><span>(.*?)</span>)?</td>")]
    private static partial Regex Cells();
}
