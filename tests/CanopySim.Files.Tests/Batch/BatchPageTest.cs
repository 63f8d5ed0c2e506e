using System.Globalization;
using CanopySim.Files.Batch;
using CanopySim.Files.Batch.Report;
using CanopySim.Files.Charts;
using CanopySim.Sampling;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>The page of a merged batch says what its data say: seasons are invented here, and every number is computed again.</summary>
public sealed class BatchPageTest : IDisposable
{
    private const int FailedItem = 7;

    private readonly TestPlan _files = new();
    private readonly BatchPlan _plan;
    private readonly PlanItems _items;
    private readonly BatchQuery _query;
    private readonly string _page;

    public BatchPageTest()
    {
        _plan = _files.Read(TestPlan.Least
            + "replicates: 2\nshard: {items: 40}\ndesign: {kind: saltelli, points: 64}\nvary:\n"
            + "  rows.vine_spacing: {distribution: uniform, from: 1 m, to: 2 m}\n  leaf.vcmax25: {distribution: uniform, from: 40 umol m-2 s-1, to: 80 umol m-2 s-1}\n");
        _items = new PlanItems(_plan);
        var seasons = new SeasonsTable(_plan);
        var hashes = new PlanHashes(_plan, _items, seasons);
        var folder = new BatchFolder(_files.At("results"), _plan, _items, hashes, seasons);
        folder.Prepare();
        for (var shard = 1; shard <= _items.Shards; shard++)
        {
            var (first, last) = _items.ShardItems(shard);
            folder.Publish(shard, [.. Enumerable.Range(first, last - first + 1).Select(number => Season(seasons, _items.Item(number)))], 1);
        }

        new BatchMerge(_plan, _items, folder, hashes, seasons).Run(incomplete: false, CancellationToken.None);
        _query = new BatchQuery(folder.Merged, seasons.Schema, threads: 1, memoryMegabytes: 200);
        _page = File.ReadAllText(Path.Combine(folder.Merged, BatchMerge.ReportFile));
    }

    public void Dispose()
    {
        _query.Dispose();
        _files.Dispose();
    }

    [Fact]
    public void Spreads_and_dates_on_the_page_are_those_of_the_seasons()
    {
        var ensemble = new Ensemble(_query, "small block");
        double[] days = [.. Enumerable.Range(1, _items.Count).Where(item => item != FailedItem).Select(item => RipeOn(_items.Item(item))).Order()];
        var spread = ensemble.Of(Outcome.Ripeness)!.Value;
        Assert.Equal((days.Length, days.Length), (ensemble.Seasons, spread.Seasons));
        foreach (var (share, found) in new[] { (0.1, spread.P10), (0.25, spread.P25), (0.5, spread.P50), (0.75, spread.P75), (0.9, spread.P90) })
            Assert.Equal(Quantile(days, share), found, 1e-9);
        Assert.Equal(days.Length, ensemble.RipeningDays().Sum(column => column.Seasons));
        foreach (var day in new[] { spread.P10, spread.P50, spread.P90 })
            Assert.Contains($"<td>{Date(day)}</td>", _page, StringComparison.Ordinal);
        Assert.Contains($"on {Date(spread.P50)}, between {Date(spread.P10)} and {Date(spread.P90)} in four of five", _page, StringComparison.Ordinal);
        Assert.Contains($"all of {days.Length} seasons reach it", _page, StringComparison.Ordinal);
    }

    /// <summary>Each point has two replicates; of the base point with the failed item nothing counts.</summary>
    [Fact]
    public void Sensitivities_on_the_page_are_those_of_the_means_at_each_point()
    {
        var outputs = new double?[_items.Points.Count];
        for (var point = 0; point < outputs.Length; point++)
        {
            int[] numbers = [(2 * point) + 1, (2 * point) + 2];
            outputs[point] = numbers.Contains(FailedItem) ? null : numbers.Average(number => RipeOn(_items.Item(number)));
        }

        var expected = SobolIndices.Of(outputs, 2, new BootstrapSettings { Seed = _plan.Seed });
        Assert.Equal((63, 1), (expected.Rows, expected.DroppedRows));
        Assert.Contains("63 base points counted, 1 dropped", _page, StringComparison.Ordinal);
        foreach (var factor in expected.Factors)
            foreach (var estimate in new[] { factor.FirstOrder, factor.Total })
                Assert.Contains($"<td>{Measure.Number(estimate.Value, 2)} ({Measure.Number(estimate.Low, 2)} to {Measure.Number(estimate.High, 2)})</td>", _page, StringComparison.Ordinal);
    }

    [Fact]
    public void Seasons_that_are_over_keep_their_last_sugar_in_the_bands()
    {
        var course = new Ensemble(_query, "small block").SugarCourse();
        Assert.Equal([200, 205, 210, 215, 220], course.Select(day => day.Day));
        Assert.All(course, day => Assert.Equal(_items.Count - 1, day.Brix.Seasons));
        Assert.Equal((12.0, 22.0), (course[^1].Brix.P10, course[^1].Brix.P90));
    }

    [Fact]
    public void Failures_assumptions_and_cautions_are_said()
    {
        Assert.Contains("1 of 512 seasons; failures.csv", _page, StringComparison.Ordinal);
        Assert.Contains("a leaf &lt;froze&gt;", _page, StringComparison.Ordinal);
        Assert.Contains("What the model assumes", _page, StringComparison.Ordinal);
        Assert.Contains("Leave licensed work to licensed people.", _page, StringComparison.Ordinal);
        Assert.Contains("a list of cases is no forecast", _page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", _page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", _page, StringComparison.Ordinal);
    }

    private static double RipeOn(PlanItem item) =>
        240 + (20 * item.Values[0].Number!.Value) - (0.3 * item.Values[1].Number!.Value) + (item.Seed % 2 * 3);

    private static ItemRows Season(SeasonsTable seasons, PlanItem item)
    {
        if (item.Number == FailedItem) return new ItemRows(item.Number, null, [], "a leaf <froze>");
        var row = new object?[seasons.Schema.Columns.Count];
        row[seasons.Schema.IndexOf("item")] = (double)item.Number;
        row[seasons.Schema.IndexOf("scenario")] = "small block";
        row[seasons.Schema.IndexOf(Outcome.Ripeness.Column)] = RipeOn(item);
        return new ItemRows(item.Number, row, [.. CourseDays(item).Select(day => Course(item, day))], null);
    }

    // Sugar of every fifth day from 200 on: odd items are ripe and over on day 210.
    private static IEnumerable<int> CourseDays(PlanItem item) => item.Number % 2 == 1 ? [200, 205, 210] : [200, 205, 210, 215, 220];

    private static object?[] Course(PlanItem item, int day)
    {
        var row = new object?[CoursesTable.Schema.Columns.Count];
        row[CoursesTable.Schema.IndexOf("item")] = (double)item.Number;
        row[CoursesTable.Schema.IndexOf("day_of_year")] = (double)day;
        row[CoursesTable.Schema.IndexOf("sugar_brix")] = item.Number % 2 == 1 ? 22.0 : 10 + (0.1 * (day - 200));
        return row;
    }

    private static string Date(double day) =>
        new DateOnly(2001, 1, 1).AddDays((int)Math.Round(day) - 1).ToString("d MMMM", CultureInfo.InvariantCulture);

    private static double Quantile(double[] sorted, double share)
    {
        var place = share * (sorted.Length - 1);
        var below = (int)place;
        return below + 1 < sorted.Length ? sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below])) : sorted[^1];
    }
}
