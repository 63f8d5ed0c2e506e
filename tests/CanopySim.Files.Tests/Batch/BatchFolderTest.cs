using CanopySim.Files.Batch;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>What a batch's folder says of its shards: whole, stale, damaged or somebody else's.</summary>
public sealed class BatchFolderTest : IDisposable
{
    private const string Text = TestPlan.Least + "replicates: 10\nshard: {items: 4}\n";

    private readonly TestPlan _files = new();

    public void Dispose() => _files.Dispose();

    [Fact]
    public void AShardThatWasPublishedIsComplete()
    {
        var folder = Published(out var seasons);
        var found = folder.Find(2);
        Assert.Equal(ShardState.Complete, found.State);
        Assert.Equal((5, 8, 1), (found.Manifest!.FirstItem, found.Manifest.LastItem, found.Manifest.Failed));
        Assert.Equal(new ItemFailure(7, "it rained"), Assert.Single(found.Manifest.Failures));
        var (table, courses) = folder.Tables(found.Manifest);
        Assert.Equal([5, 6, 8], table.Numbers(0).Select(item => item!.Value));
        Assert.Equal(3, courses.Rows);
        Assert.Equal(seasons.Schema.Id, found.Manifest.SeasonsSchema);
        Assert.Equal(ShardState.Missing, folder.Find(1).State);
        Assert.Empty(Directory.GetFiles(folder.Shards, ".*"));
    }

    [Fact]
    public void ATruncatedShardIsDamaged()
    {
        var folder = Published(out _);
        var path = Path.Combine(folder.Shards, "00002.seasons.parquet");
        File.WriteAllBytes(path, File.ReadAllBytes(path)[..^10]);
        var found = folder.Find(2);
        Assert.Equal(ShardState.Damaged, found.State);
        Assert.StartsWith("00002.seasons.parquet has ", found.Reason);
    }

    [Fact]
    public void OneChangedByteIsDamage()
    {
        var folder = Published(out _);
        var path = Path.Combine(folder.Shards, "00002.courses.parquet");
        var bytes = File.ReadAllBytes(path);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(path, bytes);
        Assert.Equal((ShardState.Damaged, "00002.courses.parquet is not what was written"), (folder.Find(2).State, folder.Find(2).Reason));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{\"shard\": 2, \"seasons\": null}")]
    public void AManifestThatIsNoneIsDamage(string text)
    {
        var folder = Published(out _);
        File.WriteAllText(Path.Combine(folder.Shards, "00002.json"), text);
        Assert.Equal(ShardState.Damaged, folder.Find(2).State);
    }

    [Theory]
    [InlineData("quality: standard\n", ShardState.Stale)]
    [InlineData("until: 06-30\n", ShardState.Stale)]
    [InlineData("seed: 2\n", ShardState.Stale)]
    [InlineData("set: {rows.spacing: 2.5 m}\n", ShardState.Stale)]
    [InlineData("vary: {rows.spacing: {values: [2 m]}}\n", ShardState.Stale)]
    [InlineData("weather: {years: 2015}\n", ShardState.Stale)]
    [InlineData("weather: {seeds: 2}\n", ShardState.Stale)]
    // What gives the same rows is the same.
    [InlineData("# a remark\n", ShardState.Complete)]
    public void AChangedPlanMakesStaleWhatItChanges(string more, ShardState expected)
    {
        var path = Published(out _).Path;
        Assert.Equal(expected, Open(path, Text + more, out _).Find(2).State);
    }

    // What stands in a list is read without a line of its own, and counts all the same.
    [Fact]
    public void AListThatThePlanSetsIsAChangeToo() =>
        Assert.NotEqual(HashWithTopping("1.4 m"), HashWithTopping("1.6 m"));

    private string HashWithTopping(string height)
    {
        var plan = _files.Read($"{Text}set: {{canopy_work.topping: \"[{{stage: bloom, height: {height}}}]\"}}\n");
        return new PlanHashes(plan, new PlanItems(plan), new SeasonsTable(plan)).Plan;
    }

    [Theory]
    [InlineData("block.yaml", "name: small block # changed\n")]
    [InlineData("weather.csv", "\n")]
    public void AChangedFileMakesStale(string name, string more)
    {
        var path = Published(out _).Path;
        if (name == "weather.csv") File.AppendAllText(_files.At(name), more);
        else File.WriteAllText(_files.At(name), File.ReadAllText(_files.At(name)).Replace("name: small block\n", more));
        var found = Open(path, Text, out _).Find(2);
        Assert.Equal((ShardState.Stale, "plan, scenario or weather has changed since"), (found.State, found.Reason));
    }

    [Fact]
    public void AFolderOfSomebodyElseIsRefused()
    {
        Directory.CreateDirectory(_files.At("photos"));
        _files.Write("photos/cat.jpg", "meow");
        var error = Assert.Throws<InputError>(() => Open(_files.At("photos"), Text, out _));
        Assert.Contains("holds no batch.json of ours", error.Message, StringComparison.Ordinal);
        Assert.Equal("meow", File.ReadAllText(_files.At("photos/cat.jpg")));
    }

    [Fact]
    public void AFolderOfAnotherBatchIsRefused()
    {
        var path = Published(out _).Path;
        var error = Assert.Throws<InputError>(() => Open(path, Text.Replace("small-plan", "other-plan"), out _));
        Assert.Contains("holds the batch \"small-plan\"", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatADeadProcessLeftIsRemovedAndWhatALivingOneWritesIsNot()
    {
        var folder = Published(out _);
        var machine = DurableFile.Writer[..DurableFile.Writer.LastIndexOf('-')];
        // No process has the largest number.
        var dead = Path.Combine(folder.Shards, $".00009.json.{machine}-{int.MaxValue}-1.tmp");
        var living = Path.Combine(folder.Shards, $".00009.json.{DurableFile.Writer}-1.tmp");
        var elsewhere = Path.Combine(folder.Shards, ".00009.json.othermachine-7-1.tmp");
        foreach (var path in new[] { dead, living, elsewhere }) File.WriteAllText(path, "half");
        folder.Prepare();
        Assert.Equal((false, true, true), (File.Exists(dead), File.Exists(living), File.Exists(elsewhere)));
    }

    [Fact]
    public void APartOfAShardIsFoundAgainAndGoneOnceTheShardIsWhole()
    {
        var folder = Open(_files.At("results"), Text, out var seasons);
        folder.Prepare();
        var first = folder.PublishPartial(1, [Rows(seasons, 1)], 2, earlier: null);
        folder.PublishPartial(1, [Rows(seasons, 1), Rows(seasons, 3)], 5, first);
        var rows = folder.FindPartial(1, out var seconds);
        Assert.Equal([1, 3], rows.Select(row => row.Item));
        Assert.Equal(5, seconds);
        Assert.Equal(Rows(seasons, 3).Season, rows[1].Season);
        Assert.Equal(Rows(seasons, 3).Courses[0], rows[1].Courses[0]);
        folder.Publish(1, [.. Enumerable.Range(1, 4).Select(item => Rows(seasons, item))], 9);
        Assert.Equal(["00001.courses.parquet", "00001.json", "00001.seasons.parquet"],
            Directory.GetFiles(folder.Shards).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    // A process that went on from an earlier one's part wrote its time too, and the earlier part is still there.
    [Fact]
    public void TimeThatTwoPartsTellOfCountsOnce()
    {
        var folder = Open(_files.At("results"), Text, out var seasons);
        folder.Prepare();
        folder.PublishPartial(1, [Rows(seasons, 1), Rows(seasons, 2)], 4, earlier: null);
        folder.PublishPartial(1, [Rows(seasons, 1), Rows(seasons, 2), Rows(seasons, 3)], 6, earlier: null);
        Assert.Equal([1, 2, 3], folder.FindPartial(1, out var seconds).Select(row => row.Item));
        Assert.Equal(6, seconds, 1e-9);
    }

    [Fact]
    public void DataThatChangeAfterTheyWereLookedAtAreNotTaken()
    {
        var folder = Published(out _);
        var manifest = folder.Find(2).Manifest!;
        var path = Path.Combine(folder.Shards, "00002.courses.parquet");
        var bytes = File.ReadAllBytes(path);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(path, bytes);
        Assert.Throws<InvalidDataException>(() => folder.Tables(manifest));
    }

    [Fact]
    public void OfAShardWithFailuresTheRestIsKept()
    {
        var folder = Published(out _);
        var (rows, seconds) = folder.Grown(folder.Find(2).Manifest!);
        Assert.Equal([5, 6, 8], rows.Select(row => row.Item));
        Assert.Equal(0.75 * 12.5, seconds, 1e-9);
    }

    [Fact]
    public void WeatherFilesOfOneNameAreToldApartByTheirFolders()
    {
        foreach (var name in new[] { "east", "west" })
        {
            Directory.CreateDirectory(_files.At(name));
            File.Copy(_files.At("weather.csv"), _files.At($"{name}/weather.csv"));
        }

        Assert.Equal(["east/weather.csv", "west/weather.csv"], Labels("weather: {files: [east/weather.csv, west/weather.csv]}\n"));
        Assert.Equal(["weather.csv"], Labels("weather: {files: [east/weather.csv]}\n"));

        IEnumerable<string> Labels(string weather)
        {
            var plan = _files.Read(Text + weather);
            return plan.Weather.Select(each => BatchWeather.LabelOf(each, plan.Scenarios[0].Document, plan));
        }
    }

    // Whichever is last, or the first while the other has to be called again: the dataset is whole, and nothing lies about.
    [Fact]
    public async Task TwoMergesAtOnceLeaveOneWholeDataset()
    {
        var plan = _files.Read(Text);
        var items = new PlanItems(plan);
        var seasons = new SeasonsTable(plan);
        var hashes = new PlanHashes(plan, items, seasons);
        var folder = new BatchFolder(_files.At("results"), plan, items, hashes, seasons);
        folder.Prepare();
        for (var shard = 1; shard <= items.Shards; shard++)
        {
            var (first, last) = items.ShardItems(shard);
            folder.Publish(shard, [.. Enumerable.Range(first, last - first + 1).Select(item => Rows(seasons, item))], 1);
        }

        for (var round = 0; round < 5; round++)
        {
            var merged = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(Merge, TestContext.Current.CancellationToken)));
            Assert.Contains(true, merged);
            Assert.True(File.Exists(Path.Combine(folder.Merged, Provenance.FileName)));
            Assert.Single(Directory.GetFiles(Path.Combine(folder.Merged, "seasons"), "*.parquet", SearchOption.AllDirectories));
            Assert.Empty(Directory.GetDirectories(folder.Path, ".merged*"));
        }

        bool Merge()
        {
            try
            {
                return new BatchMerge(plan, items, folder, hashes, seasons).Run(incomplete: false, CancellationToken.None).Seasons == items.Count;
            }
            catch (TryAgainException)
            {
                return false;
            }
        }
    }

    private BatchFolder Published(out SeasonsTable seasons)
    {
        var folder = Open(_files.At("results"), Text, out seasons);
        folder.Prepare();
        var table = seasons;
        folder.Publish(2, [.. new[] { 5, 6, 8 }.Select(item => Rows(table, item)), new ItemRows(7, null, [], "it rained")], 12.5);
        return folder;
    }

    private BatchFolder Open(string path, string text, out SeasonsTable seasons)
    {
        var plan = _files.Read(text);
        var items = new PlanItems(plan);
        seasons = new SeasonsTable(plan);
        return new BatchFolder(path, plan, items, new PlanHashes(plan, items, seasons), seasons);
    }

    private static ItemRows Rows(SeasonsTable seasons, int item)
    {
        var season = new object?[seasons.Schema.Columns.Count];
        var course = new object?[CoursesTable.Schema.Columns.Count];
        (season[0], season[1], course[0], course[1]) = ((double)item, "small block", (double)item, "2014-06-01");
        return new ItemRows(item, season, [course], null);
    }
}
