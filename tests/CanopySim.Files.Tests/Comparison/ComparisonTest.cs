using CanopySim.Files.Charts;
using CanopySim.Files.Comparison;
using CanopySim.Files.Results;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Tests.Charts;
using CanopySim.Parameters;
using CanopySim.Results;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Files.Tests.Comparison;

public class ComparisonTest
{
    private static readonly InputHashes Hashes = new("a", [], "b");

    [Fact]
    public void NoTwoOptionsAreCalledTheSame()
    {
        Assert.Equal(["Hedge", "Curtain"],
            OptionNames.Of([("Hedge", "a/scenario.yaml"), ("Curtain", "b/scenario.yaml")]));
        Assert.Equal(
            ["Hedge (a)", "hedge (late)", "Hedge (a) 2", "Roof"],
            OptionNames.Of([("Hedge", "a/scenario.yaml"), ("hedge", "late.yaml"), ("Hedge", "x/a.yaml"),
                ("Roof", "r.yaml")]));
    }

    [Theory]
    [InlineData("Hedge, 2.4 m", "hedge-2-4-m")]
    [InlineData("../../etc", "etc")]
    [InlineData("Côte d'Or", "côte-d-or")]
    [InlineData("charts", "option")]
    [InlineData("/", "option")]
    public void FoldersAreWordsThatLeadNowhereElse(string name, string folder) =>
        Assert.Equal([folder], OptionNames.FoldersOf([name]));

    [Fact]
    public void NoTwoFoldersAreTheSame() =>
        Assert.Equal(["a-b", "a-b-2", "a-b-3"], OptionNames.FoldersOf(["A b", "a.b", "a/b"]));

    [Fact]
    public void NumbersAndDatesOfASummaryAreFlattenedWithDots()
    {
        var full = InventedSeason.Full().Summary;
        var cells = FlatSummary.Of(SummaryJson.Text(full, Hashes));
        Assert.Equal("22.1", cells["harvest.sugar_brix"]);
        Assert.Equal("2023-08-02", cells["dates.veraison"]);
        Assert.Equal("0.131", cells["ripening_carbon_by_leaf_age.60_to_70_d.share"]);
        Assert.Equal("4.4", cells["fruit_light.sides.wall_1_west.par_mol_m2_d"]);
        Assert.Equal("0", cells["fruit_heat.sides.wall_1_east.hours_at_browning"]);
        Assert.Equal("8", cells["canopy_score.items.leaf_layers.points"]);
        Assert.DoesNotContain(cells.Keys, key => key.Split('.').Any(part => part.All(char.IsAsciiDigit)));
        Assert.Equal("3.1E-12", cells["checks.light_closure_max"]);
        Assert.DoesNotContain("scenario", cells.Keys);
        Assert.DoesNotContain("quality", cells.Keys);
    }

    [Fact]
    public void WhatOneOptionLacksIsAnEmptyCell()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("canopysim-csv-").FullName, "compare.csv");
        var unripe = InventedSeason.EndedOn(InventedSeason.Veraison.AddDays(-5));
        CompareCsv.Write(path, [("spring, cut", SummaryJson.Text(unripe.Summary, Hashes)),
            ("full", SummaryJson.Text(InventedSeason.Full().Summary, Hashes))]);
        var lines = File.ReadAllLines(path);
        Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
        var names = lines[0].Split(',');
        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.StartsWith("\"spring, cut\",", lines[1]);
        var cut = lines[1]["\"spring, cut\"".Length..].Split(',');
        var full = lines[2].Split(',');
        Assert.All((string[][])[cut, full], row => Assert.Equal(names.Length, row.Length));
        Assert.Equal(("", "22.1"),
            (cut[Array.IndexOf(names, "harvest.sugar_brix")], full[Array.IndexOf(names, "harvest.sugar_brix")]));
        Assert.Equal(("", "2023-08-02"),
            (cut[Array.IndexOf(names, "dates.veraison")], full[Array.IndexOf(names, "dates.veraison")]));
        Assert.DoesNotContain("harvest", names);
        Assert.DoesNotContain("canopy", names);
    }

    [Fact]
    public void WhatDiffersIsSaidInWords()
    {
        var hedge = Option("Hedge", InventedSeason.Full(), new("name", "Hedge", Mark.Given, ""),
            new("trellis.form", "upright-hedge", Mark.Given, "", Help: "Form."),
            new("rows.spacing", "2.4 m", Mark.Given, ""), new("canopy_work.topping", "none", Mark.Assumed, ""));
        var roof = Option("Roof", InventedSeason.Full(), new("name", "Roof", Mark.Given, ""),
            new("trellis.form", "overhead", Mark.Given, "", Help: "Form."),
            new("rows.spacing", "2.4 m", Mark.Given, ""), new("canopy_work.topping.0.height", "2 m", Mark.Given, ""));
        hedge = With(hedge, hedge.Scenario);
        roof = With(roof, roof.Scenario with
        {
            CanopyWork = new CanopyWork { Topping = [new Topping { Height = 2, WhenShootsReach = 1.2 }] },
        });
        var differences = ScenarioDifferences.Of([hedge.Document, roof.Document]);
        Assert.Equal(["trellis.form", "canopy_work.topping"], differences.Select(d => d.Key));
        Assert.Equal(["none", "shoots topped 2 m over the ground when shoots reach 1.2 m"], differences[1].Values);
        Assert.Equal(
            "Roof: trained as overhead instead of upright hedge; shoots topped 2 m over the ground when shoots reach "
                + "1.2 m.",
            ScenarioDifferences.InWords(roof, hedge));
        Assert.Equal(
            "Hedge: trained as upright hedge instead of overhead; left undone: shoots topped 2 m over the ground when "
                + "shoots reach 1.2 m.",
            ScenarioDifferences.InWords(hedge, roof));
        Assert.Equal("Topping\ncanopy work", ScenarioDifferences.Short("canopy_work.topping"));
        Assert.Equal(
            "Roof: trained as overhead instead of upright hedge; shoots topped 6.56 ft over the ground when shoots "
                + "reach 3.94 ft.",
            ScenarioDifferences.InWords(roof, hedge, Units.Us));

        static ComparedOption With(ComparedOption option, Scenario scenario) =>
            option with { Document = option.Document with { Scenario = scenario } };
    }

    /// <summary>Two that say the same are told of, whichever they are; nobody looks for what differs.</summary>
    [Fact]
    public void OptionsThatDoNotDifferAreSaidNotTo()
    {
        var one = Option("One", InventedSeason.Full(), new UnderstoodValue("name", "One", Mark.Given, ""),
            new UnderstoodValue("rows.spacing", "2 m", Mark.Given, ""));
        var wide = Option("Wide", InventedSeason.Full(), new UnderstoodValue("rows.spacing", "3 m", Mark.Given, ""));
        var again = one with { Name = "Again" };
        Assert.Equal("Again does not differ from One but by its name.", ScenarioDifferences.InWords(again, one));
        Assert.Equal(
            ["Again and One do not differ but by their names; their seasons are the same."],
            ScenarioDifferences.Twins([one.Document, wide.Document, again.Document], ["One", "Wide", "Again"]));
        Assert.Empty(ScenarioDifferences.Twins([one.Document, wide.Document], ["One", "Wide"]));
    }

    /// <summary>Warnings of an option, with what to heed, are in the table's row and in the terminal.</summary>
    [Fact]
    public void NoWarningIsLost()
    {
        const string Warning = "topping 2: no shoot reached 3 m, \"nothing\" was cut";
        var full = InventedSeason.Full();
        var warned = full with { Summary = full.Summary with { Warnings = [Warning], Cautions = ["Mind the blades."] } };
        ComparedOption[] options = [Option("Hedge", full), Option("Topped", warned)];
        var lines = ComparisonText.Lines(options, Units.Metric).ToList();
        Assert.Contains("Not as planned", lines);
        Assert.Contains(lines, line => line.StartsWith("  Topped: topping 2", StringComparison.Ordinal));
        Assert.Contains("  Mind the blades.", lines);
        Assert.Contains(lines, line => line.Contains("Fruit that was shaded", StringComparison.Ordinal));
        Assert.Equal(Warning, FlatSummary.Of(SummaryJson.Text(warned.Summary, Hashes))["warnings"]);
    }

    /// <summary>The second table, and each option in sentences: canopy sheet, light by side, heat, next year.</summary>
    [Fact]
    public void TheTerminalTellsWhatThePageTells()
    {
        var text = string.Join(' ', ComparisonText.Lines(
            [Option("Hedge", InventedSeason.Full()), Option("Curtain", InventedSeason.Full())], Units.Metric)
            .Select(line => line.Trim()));
        Assert.Contains("Canopy sheet: 3 of 6 measures lie within their published range.", text);
        Assert.Contains("Light on the fruit: west side 4.4, east side 4.1 mol of PAR a day", text);
        Assert.Contains("Heat: The warmest spot on a cluster reached 46 °C", text);
        Assert.Contains("62 % as fruitful as the best", text);
        Assert.Contains("Heed", text);
    }

    [Fact]
    public void ItOpensWithWhenEachIsRipe()
    {
        var (full, later, unripe) = (Option("Hedge", InventedSeason.Full()),
            Option("Curtain", RipeOn(InventedSeason.Ripe.AddDays(6))),
            Option("Roof", InventedSeason.EndedOn(InventedSeason.Ripe.AddDays(-20))));
        Assert.Equal(
            "Hedge is ripe on 17 September; Curtain on 23 September, 6 days later; Roof does not reach 22 Brix.",
            ComparisonSentences.Opening([full, later, unripe]));
        Assert.Equal("Roof does not reach 22 Brix; Hedge is ripe on 17 September.",
            ComparisonSentences.Opening([unripe, full]));
        Assert.Equal(
            "Of 5 options Hedge is ripe first, on 17 September, Curtain last, on 23 September; one does not reach its target.",
            ComparisonSentences.Opening(
                [later, full, unripe, Option("B", RipeOn(InventedSeason.Ripe.AddDays(1))),
                Option("C", RipeOn(InventedSeason.Ripe.AddDays(2)))]));
    }

    /// <summary>23 September 2022 beside 17 September 2023 is six days later, not a year earlier.</summary>
    [Fact]
    public void OptionsOfTwoYearsAreComparedInOne()
    {
        var full = InventedSeason.Full();
        var dates = full.Summary.Dates;
        var before = full with
        {
            Summary = full.Summary with
            {
                Dates = dates with
                {
                    Budbreak = dates.Budbreak!.Value.AddYears(-1),
                    TargetSugar = InventedSeason.Ripe.AddDays(6).AddYears(-1)
                },
            },
        };
        Assert.Equal("6 days later", ComparisonSentences.DaysApart(Option("Before", before), Option("Now", full)));
        Assert.False(ScenarioDifferences.HaveOneWeather([Option("Now", full), Option("Before", before)]));
        Assert.True(ScenarioDifferences.HaveOneWeather([Option("Now", full), Option("Same", full)]));
    }

    [Theory]
    [InlineData(Units.Metric, "1.0 t/ha more fruit (+10 %)")]
    [InlineData(Units.Us, "0.4 short tons/acre more fruit (+10 %)")]
    public void CostIsSaidInTheUnitsOfTheReader(Units units, string cost)
    {
        var full = InventedSeason.Full();
        var harvest = full.Summary.Harvest! with { YieldTPerHa = 10.64 };
        var more = full with { Summary = full.Summary with { Harvest = harvest } };
        Assert.Equal($"Curtain beside Hedge: {cost}.",
            ComparisonSentences.Cost(Option("Curtain", more), Option("Hedge", full), units));
        Assert.Equal("Same: as much fruit and leaf as Hedge, to the digits shown.",
            ComparisonSentences.Cost(Option("Same", full), Option("Hedge", full), units));
    }

    [Theory]
    [InlineData(Units.Metric)]
    [InlineData(Units.Us)]
    public void TwelveOptionsWithLongNamesFitEightyColumns(Units units)
    {
        var options = Enumerable.Range(1, 12)
            .Select(i => Option($"An option with rather a long name, number {i}", InventedSeason.Full())).ToList();
        var lines = ComparisonText.Lines(options, units).ToList();
        Assert.All(lines, line => Assert.True(line.Length <= ComparisonText.Width, line));
        Assert.Equal(2 * 11, lines.Count(line => line.StartsWith("  difference", StringComparison.Ordinal)));
        var wide = ComparisonText.Lines(options, units, 120).ToList();
        Assert.All(wide, line => Assert.True(line.Length <= 120, line));
        Assert.Contains(wide, line => line.Length > ComparisonText.Width);
        Assert.Contains(lines, line => line.Contains(units == Units.Us ? "tn/ac" : "t/ha", StringComparison.Ordinal));
    }

    internal static ComparedOption Option(string name, SeasonResult season, params UnderstoodValue[] values) => new(
        name,
        new ScenarioDocument
        {
            Scenario = InventedSeason.Scenario(name),
            Path = "scenario.yaml",
            BasedOn = [],
            WeatherPath = "weather.csv",
            Values = values
        },
        season);

    private static SeasonResult RipeOn(DateOnly day)
    {
        var full = InventedSeason.Full();
        return full with { Summary = full.Summary with { Dates = full.Summary.Dates with { TargetSugar = day } } };
    }
}
