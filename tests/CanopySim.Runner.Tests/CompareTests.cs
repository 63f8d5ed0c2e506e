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
    [InlineData("Water transpired a vine", "season.transpiration_l_per_vine", "L")]
    [InlineData("Light on the clusters, of that over the canopy", "fruit_light.share_of_incident", "%", 1, 100)]
    [InlineData("Warmest spot on the fruit", "fruit_heat.highest_surface_degc", "°C")]
    [InlineData("Fruit warm enough to brown, worse side", "fruit_heat.hours_at_browning_max", "h")]
    [InlineData("Fruitfulness of next year's buds, of the best", "next_year.fruitfulness", "%", 1, 100)]
    [InlineData("Expected fruitfulness, share of the best", "next_year.fruitfulness", "%", 1, 100)]
    [InlineData("Share that light leaves", "next_year.light_factor", "%", 1, 100)]
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

    /// <summary>Each side's light and heat, as the option's summary has them.</summary>
    [Theory]
    [InlineData("fruit_light", 2, "par_mol_m2_d", 1)]
    [InlineData("fruit_light", 3, "share_of_incident", 100)]
    [InlineData("fruit_light", 4, "sunlit_share", 100)]
    [InlineData("fruit_light", 5, "morning_share", 100)]
    [InlineData("fruit_heat", 1, "highest_surface_degc", 1)]
    [InlineData("fruit_heat", 2, "hours_at_browning", 1)]
    [InlineData("fruit_heat", 3, "hours_at_necrosis", 1)]
    public void Sides_have_the_numbers_of_the_summaries(string table, int column, string key, double factor)
    {
        var rows = Rows().Matches(File.ReadAllText(runs.Report));
        foreach (var (name, folder) in Options)
        {
            foreach (var side in Summary(folder).GetProperty(table).GetProperty("sides").EnumerateArray())
            {
                var head = $"{name}, {side.GetProperty("facing").GetString()} side";
                // Rows of light have six cells, those of heat five.
                var row = Assert.Single(rows, row => WebUtility.HtmlDecode(row.Groups[1].Value) == head
                    && Cells().Count(row.Groups[2].Value) == (table == "fruit_light" ? 5 : 4));
                var cell = Cells().Matches(row.Groups[2].Value)[column - 1].Groups[1].Value;
                AssertShows(cell, factor * side.GetProperty(key).GetDouble());
            }
        }
    }

    /// <summary>Each item of an option's canopy sheet stands in its column, beside range, source and meaning.</summary>
    [Fact]
    public void The_canopy_sheets_stand_side_by_side()
    {
        var rows = Rows().Matches(File.ReadAllText(runs.Report))
            .Where(row => Cells().Count(row.Groups[2].Value) == 3).ToList();
        foreach (var (option, folder) in Options.Select((option, i) => (i, option.Folder)))
        {
            var sheet = CsvRows.Read(Path.Combine(runs.Compared, folder, "canopy_sheet.csv"));
            Assert.True(sheet.Rows.Count > 15);
            for (var i = 0; i < sheet.Rows.Count; i++)
            {
                if (sheet.Column("wall").ElementAt(i) != "all") continue;
                var (name, meaning) = (sheet.Column("name").ElementAt(i), sheet.Column("meaning").ElementAt(i));
                var row = Assert.Single(
                    rows, row => WebUtility.HtmlDecode(row.Groups[1].Value) == $"{name}<br><span>{meaning}</span>");
                var cells = Cells().Matches(row.Groups[2].Value);
                Assert.Equal(sheet.Column("verdict").ElementAt(i), cells[1 + option].Groups[2].Value);
                Assert.Contains(sheet.Column("source").ElementAt(i), WebUtility.HtmlDecode(cells[0].Groups[2].Value));
                var factor = sheet.Column("unit").ElementAt(i) == "share" ? 100 : 1;
                if (sheet.Column("value").ElementAt(i) is { Length: > 0 } value)
                    AssertShows(
                        cells[1 + option].Groups[1].Value, factor * double.Parse(value, CultureInfo.InvariantCulture));
            }
        }
    }

    [Fact]
    public void Columns_of_the_table_say_what_they_are()
    {
        var table = CsvRows.Read(Path.Combine(runs.Compared, "compare.csv"));
        Assert.DoesNotContain(table.Names, name => name.Split('.').Any(part => part.All(char.IsAsciiDigit)));
        var sides = table.Names.Where(name => name.StartsWith("fruit_heat.sides.", StringComparison.Ordinal)
            && name.EndsWith(".highest_surface_degc", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, sides.Count);
        for (var i = 0; i < Options.Length; i++)
        {
            var facing = sides.Select(side => table.Column(side).ElementAt(i)).Where(cell => cell.Length > 0);
            Assert.Equal(
                Summary(Options[i].Folder).GetProperty("fruit_heat").GetProperty("sides").EnumerateArray()
                    .Select(side => side.GetProperty("highest_surface_degc").GetRawText()).Order(),
                facing.Order());
        }

        var leaves = table.Names.Where(name => name.StartsWith("ripening_carbon", StringComparison.Ordinal)).ToList();
        Assert.Contains("ripening_carbon_by_leaf_age.40_to_50_d.share", leaves);
        Assert.Equal(1, leaves.Sum(name => double.Parse(
            table.Column(name).First() is { Length: > 0 } cell ? cell : "0", CultureInfo.InvariantCulture)), 4);
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
        Assert.Contains($"<li>{CompareRuns.Second}: trained as hanging curtain instead of upright hedge.</li>", page);
        Assert.Contains("All options had the same weather.", page);
        Assert.Contains("A model result is advice to check in the row, not an instruction.", page);
        Assert.DoesNotMatch("(src|href)=\"(https?:)?//", page);
    }

    private static (string Name, string Folder)[] Options { get; } =
        [(CompareRuns.First, "first-season-first-season"), (CompareRuns.Second, "first-season-curtain")];

    /// <summary>A shown number is the value, to half of its last digit.</summary>
    private static void AssertShows(string text, double value)
    {
        var number = text.Split(' ')[0];
        var decimals = number.Contains('.') ? number.Length - number.IndexOf('.') - 1 : 0;
        var shown = double.Parse(number.Replace('−', '-'), CultureInfo.InvariantCulture);
        Assert.True(Math.Abs(shown - value) <= (0.5 * Math.Pow(10, -decimals)) + 1e-4, $"{text}, not {value}");
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
