using CanopySim.Files.Batch;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>Questions to a merged dataset: SELECTs over its tables are answered, everything else is refused.</summary>
public sealed class BatchQueryTest : IDisposable
{
    private readonly TestPlan _files = new();
    private readonly BatchQuery _query;

    public BatchQueryTest()
    {
        (Merged, Outcome, _query) = Merge("results");
    }

    private MergeOutcome Outcome { get; }

    private string Merged { get; }

    public void Dispose()
    {
        _query.Dispose();
        _files.Dispose();
    }

    [Fact]
    public void AMergeHasEveryItemOnceBesideItsScenario()
    {
        Assert.Equal((12, 0, 4), (Outcome.Seasons, Outcome.Failed, Outcome.Files));
        var result = Ask("SELECT item, scenario, \"rows.vine_spacing\", \"harvest.sugar_brix\" FROM seasons ORDER BY item");
        Assert.Equal(["item", "scenario", "rows.vine_spacing", "harvest.sugar_brix"], result.Columns);
        Assert.Equal(Enumerable.Range(1, 12).Select(item => $"{item}"), result.Rows.Select(row => row[0]));
        Assert.Equal(["1", "small block (block)", "1", null], result.Rows[0]);
        Assert.Equal(["12", "small block (other)", "2", "21.5"], result.Rows[11]);
        Assert.Equal("6", Ask("SELECT count(*) FROM courses JOIN seasons USING (item) WHERE seasons.scenario = 'small block (other)'").Rows[0][0]);
    }

    [Fact]
    public void TablesOfAnotherPlanAreToldAsSuch()
    {
        var other = new SeasonsTable(_files.Read(TestPlan.Least + "vary: {rows.spacing: {values: [2 m, 3 m]}}\n"));
        var error = Assert.Throws<QueryException>(() => new BatchQuery(Merged, other.Schema, threads: 1, memoryMegabytes: 200));
        Assert.Contains("the merged tables are not those of this plan, or hold no season: merge again", error.Message, StringComparison.Ordinal);
        Assert.Contains("rows.spacing", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ColumnsComeInTheirOrder()
    {
        var columns = Ask("SELECT * FROM seasons LIMIT 0").Columns;
        Assert.Equal(["item", "scenario", "weather", "year", "seed", "rows.vine_spacing"], columns.Take(6));
        Assert.Equal(columns.Count, columns.Distinct().Count());
    }

    [Theory]
    [InlineData("WITH part AS (SELECT * FROM seasons) SELECT count(*) FROM part", "12")]
    [InlineData("SELECT avg(\"harvest.sugar_brix\") FROM seasons", "21.5")]
    [InlineData("SELECT count(*) FROM (DESCRIBE seasons) WHERE column_type NOT IN ('DOUBLE', 'VARCHAR')", "0")]
    public void Selects(string sql, string answer) => Assert.Equal(answer, Ask(sql).Rows[0][0]);

    [Theory]
    [InlineData("COPY (SELECT 1) TO 'FOLDER/new.csv'")]
    [InlineData("COPY seasons TO 'FOLDER/new.parquet'")]
    [InlineData("EXPORT DATABASE 'FOLDER/new'")]
    [InlineData("SELECT * FROM read_text('FOLDER/../../plan.yaml')")]
    [InlineData("SELECT * FROM read_text('/etc/hostname')")]
    [InlineData("SELECT * FROM glob('/etc/*')")]
    [InlineData("SELECT * FROM read_parquet('FOLDER/../shards/*.parquet')")]
    [InlineData("ATTACH 'FOLDER/new.db'")]
    [InlineData("INSTALL httpfs")]
    [InlineData("LOAD json")]
    [InlineData("SET enable_external_access = true")]
    [InlineData("PRAGMA enable_profiling")]
    [InlineData("CREATE TABLE more AS SELECT 1")]
    [InlineData("DROP VIEW seasons")]
    [InlineData("SELECT 1; SELECT 2")]
    [InlineData("SELECT 1; COPY (SELECT 1) TO 'FOLDER/new.csv'")]
    [InlineData("SELECT nothing FROM seasons")]
    [InlineData("not SQL")]
    [InlineData("")]
    [InlineData("'")]
    public void AnythingElseIsRefused(string sql)
    {
        var before = Directory.GetFileSystemEntries(Merged, "*", SearchOption.AllDirectories);
        Assert.Throws<QueryException>(() => Ask(sql.Replace("FOLDER", Merged)));
        Assert.Equal(before, Directory.GetFileSystemEntries(Merged, "*", SearchOption.AllDirectories));
        Assert.Equal("12", Ask("SELECT count(*) FROM seasons").Rows[0][0]);
    }

    // Signs of a pattern, a quote, and a name that is more than 255 bytes where each is written as a code.
    [Theory]
    [InlineData("results [1]", "small")]
    [InlineData("re*lts?", "small")]
    [InlineData("results [1", "small")]
    [InlineData("the vine's", "ქვევრისმიწაქვევრისმიწაქვევრისმიწაქვევრისმიწაქვევრისმიწა 50 %/=")]
    public void NamesOfFoldersMayHoldAnything(string folder, string scenario)
    {
        _files.Write("block.yaml", File.ReadAllText(_files.At("block.yaml")).Replace("name: small block", $"name: \"{scenario}\""));
        // Names that the patterns would find, were they patterns.
        Directory.CreateDirectory(_files.At("results 1"));
        var (_, _, query) = Merge(folder);
        using (query)
        {
            var result = query.Ask("SELECT scenario, count(*) FROM seasons GROUP BY scenario ORDER BY scenario", TestContext.Current.CancellationToken);
            Assert.Equal([$"{scenario} (block)", $"{scenario} (other)"], result.Rows.Select(row => row[0]));
            Assert.Equal(["6", "6"], result.Rows.Select(row => row[1]));
        }
    }

    private (string Merged, MergeOutcome Outcome, BatchQuery Query) Merge(string name)
    {
        var plan = _files.Read(
            TestPlan.Least.Replace("[block.yaml]", "[block.yaml, other.yaml]") + "replicates: 3\nvary: {rows.vine_spacing: {values: [1 m, 2 m]}}\nshard: {items: 5}\n");
        var items = new PlanItems(plan);
        var seasons = new SeasonsTable(plan);
        var hashes = new PlanHashes(plan, items, seasons);
        var folder = new BatchFolder(_files.At(name), plan, items, hashes, seasons);
        folder.Prepare();
        for (var shard = 1; shard <= items.Shards; shard++)
        {
            var (first, last) = items.ShardItems(shard);
            folder.Publish(shard, [.. Enumerable.Range(first, last - first + 1).Select(number => Rows(plan, seasons, items.Item(number)))], 1);
        }

        var outcome = new BatchMerge(plan, items, folder, hashes, seasons).Run(incomplete: false, CancellationToken.None);
        return (folder.Merged, outcome, new BatchQuery(folder.Merged, seasons.Schema, threads: 1, memoryMegabytes: 200));
    }

    private QueryResult Ask(string sql) => _query.Ask(sql, TestContext.Current.CancellationToken);

    private static ItemRows Rows(BatchPlan plan, SeasonsTable seasons, PlanItem item)
    {
        var season = new object?[seasons.Schema.Columns.Count];
        season[0] = (double)item.Number;
        season[seasons.Schema.IndexOf("scenario")] = plan.Scenarios[item.Scenario].Label;
        season[seasons.Schema.IndexOf("rows.vine_spacing")] = item.Values[0].Number;
        if (item.Number % 2 == 0) season[seasons.Schema.IndexOf("harvest.sugar_brix")] = 21.5;
        var course = new object?[CoursesTable.Schema.Columns.Count];
        course[0] = (double)item.Number;
        return new ItemRows(item.Number, season, [course], null);
    }
}
