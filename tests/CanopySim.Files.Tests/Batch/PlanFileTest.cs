using CanopySim.Files.Batch;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>What a plan says, and every way in which it can be wrong, with the one line that tells it.</summary>
public sealed class PlanFileTest : IDisposable
{
    private const string CasesFile = "Batch/bad-plans.txt";

    private readonly TestPlan _files = new();

    public static TheoryData<string> BadPlans => [.. GoldenCases.Read(CasesFile).Select(found => found.Name)];

    public void Dispose() => _files.Dispose();

    [Fact]
    public void ReadsAWholePlan()
    {
        var plan = _files.Read("""
            name: all-of-it
            scenarios: [block.yaml, other.yaml]
            set: {site.elevation: 120 ft}
            weather: {years: [2014 to 2015], seeds: [3, 7 to 8]}
            vary:
              rows.spacing: {values: [2 m, 8 ft]}
              canopy_work.shoots_per_meter: {from: 8 1/m, to: 20 1/m, steps: 4}
              growth.preformed_nodes: {values: [6, 9]}
              cultivar.from_table: {values: [merlot, pinot-noir]}
              leaf.vcmax25: {distribution: normal, mean: 57 umol m-2 s-1, standard_deviation: 6 umol m-2 s-1}
              growth.base_temperature: {distribution: normal, mean: 44 degF, standard_deviation: 1.8 degF}
              soil.transpirable_water: {distribution: lognormal, median: 150 mm, spread: 1.5, to: 400 mm}
              carbon.q10: {distribution: triangular, from: 1.6, most_likely: 2, to: 2.5}
            design: {kind: latin_hypercube, points: 50}
            replicates: 3
            seed: 11
            quality: standard
            until: 09-30
            shard: {minutes: 30}
            """);
        Assert.Equal(["small block (block)", "small block (other)"], plan.Scenarios.Select(scenario => scenario.Label));
        Assert.Equal(120 * 0.3048, plan.Scenarios[1].Document.Scenario.Site.Elevation, 1e-9);
        Assert.Equal(
            [(2014, 3), (2014, 7), (2014, 8), (2015, 3), (2015, 7), (2015, 8)],
            plan.Weather.Select(weather => (weather.Year!.Value, (int)weather.Seed!.Value)));
        Assert.Equal([2, 8 * 0.3048], plan.Varied[0].Values.Select(value => value.Number!.Value));
        Assert.Equal([8, 12, 16, 20], plan.Varied[1].Values.Select(value => value.Number!.Value));
        Assert.Equal(["merlot", "pinot-noir"], plan.Varied[3].Values.Select(value => value.Text));
        Assert.All(plan.Varied[3].Values, value => Assert.Null(value.Number));
        // 44 °F are 6.67 °C; 1.8 °F wide is 1 K, not minus 16.8 °C.
        Assert.Equal((44.0 - 32) / 1.8, plan.Varied[5].At(0.5).Number!.Value, 1e-6);
        Assert.Equal(((44.0 - 32) / 1.8) + 1, plan.Varied[5].At(0.841344746).Number!.Value, 1e-6);
        Assert.Equal(2 * 6 * 2 * 4 * 2 * 2 * 50 * 3, new PlanItems(plan).Count);
        Assert.Equal((Quality.Standard, (9, 30), 90), (plan.Quality, plan.Until, plan.ItemsPerShard));
    }

    [Theory]
    [MemberData(nameof(BadPlans))]
    public void SaysWhereWhatAndWhatIsExpected(string name)
    {
        var (_, text, expected) = GoldenCases.Read(CasesFile).Single(found => found.Name == name);
        // "+" stands for the least that a plan must give, two lines.
        Assert.Equal(expected, _files.Message(text.Replace("+\n", TestPlan.Least)));
    }

    [Fact]
    public void SeasonsThatTheWeatherDoesNotCoverAreRefused()
    {
        var plan = _files.Read(TestPlan.Least + "weather: {years: 2014 to 2019}\n");
        var error = Assert.Throws<SeasonInputException>(() => new BatchWeather(plan, 1).CheckAll(new PlanItems(plan)));
        Assert.Contains("2014-01-01 to 2015-12-31", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ABudbreakOfOneYearIsRefusedForAnother()
    {
        var plan = _files.Read(TestPlan.Least + "set: {season.budbreak: 2014-04-10}\nweather: {years: 2014 to 2015}\n");
        var error = Assert.Throws<SeasonInputException>(() => new BatchWeather(plan, 1).CheckAll(new PlanItems(plan)));
        Assert.Equal("season.budbreak", error.Key);
        Assert.Contains("2014-04-10 lies outside the season 2015-02-01 to 2015-11-30", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ANameTooLongForAFolderIsRefused()
    {
        _files.Write("block.yaml", File.ReadAllText(_files.At("block.yaml")).Replace("name: small block", $"name: {new string('a', 247)}"));
        var message = _files.Message(TestPlan.Least);
        Assert.StartsWith("plan.yaml:2: scenarios.0: the name \"aaa", message, StringComparison.Ordinal);
        Assert.EndsWith(
            "\", for which a folder's name needs 256 bytes; expected a shorter name: a folder's has at most 255", message, StringComparison.Ordinal);
        _files.Write("block.yaml", File.ReadAllText(_files.At("block.yaml")).Replace("aa", "a"));
        Assert.Equal(124, _files.Read(TestPlan.Least).Scenarios[0].Label.Length);
    }

    [Fact]
    public void TellsAPlanFromAScenario()
    {
        Assert.True(PlanFile.IsPlan(_files.Write("plan.yaml", TestPlan.Least)));
        Assert.False(PlanFile.IsPlan(_files.At("block.yaml")));
        Assert.False(PlanFile.IsPlan(_files.At("none.yaml")));
    }
}
