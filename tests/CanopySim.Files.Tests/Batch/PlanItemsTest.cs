using CanopySim.Files.Batch;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>The list of a plan: fixed, numbered, a function of the plan alone.</summary>
public sealed class PlanItemsTest : IDisposable
{
    private const string Crossed = """
        name: crossed
        scenarios: [block.yaml, other.yaml]
        weather: {years: 2014 to 2015}
        vary:
          rows.vine_spacing: {values: [1 m, 1.5 m]}
          leaf.vcmax25: {distribution: normal, mean: 57 umol m-2 s-1, standard_deviation: 6 umol m-2 s-1}
          canopy_work.shoots_per_meter: {values: [8 1/m, 12 1/m, 16 1/m]}
        design: {kind: KIND, SIZE}
        replicates: 2
        seed: 5
        shard: {items: 7}

        """;

    private readonly TestPlan _files = new();

    public void Dispose() => _files.Dispose();

    [Fact]
    public void ReplicatesAreFastestAndScenariosSlowest()
    {
        var items = Items("random", "points: 4");
        Assert.Equal(2 * 2 * 2 * 3 * 4 * 2, items.Count);
        Assert.Equal((1, 0, 0, 5UL), Head(items.Item(1)));
        Assert.Equal((2, 0, 0, 6UL), Head(items.Item(2)));
        Assert.Equal((49, 0, 1, 5UL), Head(items.Item(49)));
        Assert.Equal((97, 1, 0, 5UL), Head(items.Item(97)));
        // After the replicates the points, then the last listed key, then the one before.
        Assert.Equal(items.Item(1).Values, items.Item(2).Values);
        Assert.NotEqual(items.Item(1).Values[1], items.Item(3).Values[1]);
        Assert.Equal(["8 1/m", "12 1/m", "16 1/m", "8 1/m"], new[] { 1, 9, 17, 25 }.Select(number => items.Item(number).Values[2].Text));
        Assert.Equal(["1 m", "1.5 m"], new[] { 24, 25 }.Select(number => items.Item(number).Values[0].Text));

        static (int, int, int, ulong) Head(PlanItem item) => (item.Number, item.Scenario, item.Weather, item.Seed);
    }

    [Fact]
    public void EveryCombinationIsThereOnce()
    {
        var items = Items("sobol_sequence", "points: 4");
        var all = Enumerable.Range(1, items.Count).Select(items.Item).ToList();
        Assert.Equal(items.Count, all.Select(item => (item.Scenario, item.Weather, item.Seed, string.Join('|', item.Values))).Distinct().Count());
        Assert.Throws<ArgumentOutOfRangeException>(() => items.Item(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => items.Item(items.Count + 1));
    }

    [Theory]
    [InlineData("random", "points: 16", 16)]
    [InlineData("latin_hypercube", "points: 16", 16)]
    [InlineData("sobol_sequence", "points: 16", 16)]
    [InlineData("morris", "trajectories: 8", 16)]
    [InlineData("saltelli", "points: 8", 24)]
    public void DesignsHaveTheirPointsAndAreTheSameAgain(string kind, string size, int points)
    {
        var (one, two) = (Items(kind, size), Items(kind, size));
        Assert.Equal(2 * 2 * 2 * 3 * points * 2, one.Count);
        Assert.All(Enumerable.Range(1, one.Count), number => Assert.Equal(one.Item(number).Values, two.Item(number).Values));
        var drawn = Enumerable.Range(0, points).Select(point => one.Item(1 + (2 * point)).Values[1].Number!.Value).ToList();
        Assert.All(drawn, value => Assert.InRange(value, 10, 200));
        // Seven standard errors of sixteen independent draws.
        Assert.InRange(drawn.Average(), 57 - 10.5, 57 + 10.5);
    }

    [Fact]
    public void ShardsCoverTheListWithoutOverlap()
    {
        var items = Items("random", "points: 4");
        var covered = Enumerable.Range(1, items.Shards).SelectMany(shard =>
        {
            var (first, last) = items.ShardItems(shard);
            return Enumerable.Range(first, last - first + 1);
        });
        Assert.Equal(Enumerable.Range(1, items.Count), covered);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 10)]
    [InlineData(7, 7)]
    [InlineData(9, 4)]
    public void TasksShareTheShards(int tasks, int shards) =>
        Assert.Equal(Enumerable.Range(1, shards), Enumerable.Range(0, tasks).SelectMany(task => TaskShards.Of(task, tasks, shards)));

    [Fact]
    public void AnItemIsTheScenarioThatItsTextSays()
    {
        var plan = _files.Read(Crossed.Replace("KIND", "random").Replace("SIZE", "points: 4"));
        var items = new PlanItems(plan);
        var item = items.Item(150);
        var scenario = plan.Scenarios[item.Scenario].Template.Document(items.Changes(item)).Scenario;
        Assert.Equal((item.Values[0].Number, item.Values[1].Number, item.Values[2].Number, item.Seed),
            (scenario.Rows.VineSpacing, scenario.Leaf.Vcmax25, scenario.CanopyWork.ShootsPerMeter, scenario.Seed));
        Assert.Equal(plan.Weather[item.Weather].Year, scenario.Season.Year);
        Assert.Equal(3, scenario.Rows.Spacing);
    }

    [Theory]
    [InlineData("05-31", 2014, "2014-05-31")]
    [InlineData("02-29", 2015, "2015-02-28")]
    [InlineData("01-15", 2014, "2015-01-15")]
    public void UntilIsADayOfTheSeason(string until, int year, string expected)
    {
        var plan = _files.Read(TestPlan.Least + $"until: {until}\n");
        Assert.Equal(DateOnly.Parse(expected, System.Globalization.CultureInfo.InvariantCulture), plan.UntilOf(SeasonCalendar.InYear(plan.Scenarios[0].Document.Scenario.Site, year)));
    }

    private PlanItems Items(string kind, string size) =>
        new(_files.Read(Crossed.Replace("KIND", kind).Replace("SIZE", size)));
}
