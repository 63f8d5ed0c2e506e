using System.Globalization;
using CanopySim.Files.Batch.Report;
using CanopySim.Files.Results;

namespace CanopySim.Files.Batch;

/// <summary>What a merge found and wrote.</summary>
/// <param name="Seasons">Rows of the table of seasons.</param>
/// <param name="Failed">Items that could not be grown.</param>
/// <param name="Files">Files written.</param>
/// <param name="Unusable">Shards that are missing, stale or damaged, with why.</param>
/// <param name="PageFault">Why there is no page; empty where there is one.</param>
public sealed record MergeOutcome(
    int Seasons, int Failed, int Files, IReadOnlyList<(int Shard, string Why)> Unusable, string PageFault = "");

/// <summary>
/// Puts the shards of a plan together to one dataset, partitioned by scenario. Which shards there must be is the plan's to
/// say, what is in them their manifests': nothing is taken because it happens to lie in the folder.
/// </summary>
public sealed class BatchMerge(BatchPlan plan, PlanItems items, BatchFolder folder, PlanHashes hashes, SeasonsTable seasons)
{
    public const string FailuresFile = "failures.csv";

    public const string ReportFile = "report.html";

    /// <summary>The column that stands in the names of the dataset's folders.</summary>
    public const string Partition = "scenario";

    // What a page asks of a million seasons takes a few hundred megabytes.
    private const int ReportMemoryMegabytes = 2000;

    // A hundred files for a million seasons: few enough to open, small enough to write from memory.
    private const int ItemsInFile = 10_000;

    private const string PartialEnding = ".partial";
    private const string OldEnding = ".old";

    private readonly List<ItemFailure> _failures = [];
    private readonly List<ShardManifest> _merged = [];
    private int _rows;
    private int _files;

    /// <summary>Checks that all shards are there, and merges them.</summary>
    /// <param name="incomplete">Whether to merge what there is where some are not.</param>
    /// <param name="stop">Stops between shards; nothing is changed then.</param>
    /// <exception cref="TryAgainException">The folder cannot be written.</exception>
    public MergeOutcome Run(bool incomplete, CancellationToken stop)
    {
        var found = Enumerable.Range(1, items.Shards).Select(shard => (Shard: shard, Found: folder.Find(shard))).ToList();
        List<(int, string)> unusable = [.. found.Where(one => one.Found.State != ShardState.Complete)
            .Select(one => (one.Shard, one.Found.State == ShardState.Missing ? "not grown yet" : one.Found.Reason))];
        if (unusable.Count > 0 && !incomplete) return new MergeOutcome(0, 0, 0, unusable);
        var fault = "";
        var partial = Path.Combine(folder.Path, $".merged.{DurableFile.Writer}-{Path.GetRandomFileName()}{PartialEnding}");
        try
        {
            Restore();
            Directory.CreateDirectory(partial);
            MergeTables(partial, [.. found.Where(one => one.Found.State == ShardState.Complete).Select(one => one.Found.Manifest!)], stop);
            WriteFailures(partial);
            DurableFile.Publish(
                Path.Combine(partial, Provenance.FileName),
                System.Text.Encoding.UTF8.GetBytes(Provenance.Json(plan, items, hashes, _merged, _rows, unusable.Count)));
            fault = TryWriteReport(partial, unusable.Count);
            Replace(partial);
        }
        catch (InvalidDataException error)
        {
            throw new TryAgainException($"a shard changed while it was merged: {error.Message}", error);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw DurableFile.Unwritable(folder.Merged, error);
        }
        finally
        {
            if (Directory.Exists(partial)) Directory.Delete(partial, recursive: true);
        }

        return new MergeOutcome(_rows, _failures.Count, _files, unusable, fault);
    }

    private void MergeTables(string target, IReadOnlyList<ShardManifest> manifests, CancellationToken stop)
    {
        var (rows, courses) = (new TableData(seasons.Schema), new TableData(CoursesTable.Schema));
        var (scenario, first) = (-1, 0);
        foreach (var manifest in manifests)
        {
            stop.ThrowIfCancellationRequested();
            var tables = folder.Tables(manifest);
            CheckItems(manifest, tables.Seasons);
            // A shard may hold the end of one scenario and the beginning of the next.
            for (var (row, course) = (0, 0); row < tables.Seasons.Rows; row++)
            {
                var item = items.Item((int)tables.Seasons.Numbers(0)[row]!.Value);
                if (item.Scenario != scenario || rows.Rows == ItemsInFile) Flush(item.Scenario, item.Number);
                rows.Add(tables.Seasons.Row(row));
                for (; course < tables.Courses.Rows && (int)tables.Courses.Numbers(0)[course]!.Value == item.Number; course++)
                    courses.Add(tables.Courses.Row(course));
            }

            _failures.AddRange(manifest.Failures);
            _merged.Add(manifest);
        }

        Flush(-1, 0);

        void Flush(int nextScenario, int nextFirst)
        {
            if (rows.Rows > 0)
            {
                var name = string.Create(
                    CultureInfo.InvariantCulture,
                    $"{PartitionFolder.Name(Partition, plan.Scenarios[scenario].Label)}/from-item-{first:0000000}.parquet");
                DurableFile.Publish(Path.Combine(target, "seasons", name), ParquetTable.Bytes(rows, without: Partition));
                DurableFile.Publish(Path.Combine(target, "courses", name), ParquetTable.Bytes(courses));
                _files += 2;
                _rows += rows.Rows;
                (rows, courses) = (new TableData(seasons.Schema), new TableData(CoursesTable.Schema));
            }

            (scenario, first) = (nextScenario, nextFirst);
        }
    }

    // Each item once, grown or failed, and in order: what a manifest says is not yet what the table holds.
    private static void CheckItems(ShardManifest manifest, TableData table)
    {
        var failed = manifest.Failures.Select(failure => failure.Item).ToHashSet();
        var expected = Enumerable.Range(manifest.FirstItem, manifest.LastItem - manifest.FirstItem + 1).Where(item => !failed.Contains(item));
        if (!expected.SequenceEqual(table.Numbers(0).Select(item => (int)item!.Value)))
            throw new InvalidDataException($"shard {manifest.Shard} does not hold each of its items once");
    }

    private void WriteFailures(string target)
    {
        if (_failures.Count == 0) return;
        CsvTable.Write(
            Path.Combine(target, FailuresFile),
            [
                CsvColumn<ItemFailure>.Whole("item", failure => failure.Item),
                CsvColumn<ItemFailure>.Words("scenario", failure => plan.Scenarios[items.Item(failure.Item).Scenario].Label),
                CsvColumn<ItemFailure>.Words("message", failure => failure.Message),
            ],
            _failures);
    }

    // Tables that took days are not lost to a page that cannot be drawn.
    private string TryWriteReport(string target, int missingShards)
    {
        try
        {
            WriteReport(target, missingShards);
            return "";
        }
        catch (Exception error) when (error is not (IOException or UnauthorizedAccessException or OperationCanceledException))
        {
            return error.Message;
        }
    }

    // One thread, so that sums over seasons have the same bits every time.
    private void WriteReport(string target, int missingShards)
    {
        if (_rows == 0) return;
        using var query = new BatchQuery(target, seasons.Schema, threads: 1, ReportMemoryMegabytes);
        var page = BatchPage.Html(new BatchReport
        {
            Plan = plan,
            Items = items,
            Query = query,
            Failures = _failures,
            MissingShards = missingShards,
            PlanSha256 = hashes.Plan,
            EngineVersion = SummaryJson.EngineVersion,
            EngineBuild = PlanHashes.EngineBuild,
            CoreSeconds = _merged.Sum(shard => shard.Seconds),
            Machines = _merged.Select(shard => shard.Machine).Distinct().Count(),
        });
        DurableFile.Publish(Path.Combine(target, ReportFile), System.Text.Encoding.UTF8.GetBytes(page));
    }

    // A merge that was killed between its two renames left the dataset before it aside.
    private void Restore()
    {
        if (Directory.Exists(folder.Merged) || !Directory.Exists(folder.Path)) return;
        var aside = Directory.GetDirectories(folder.Path, $".merged.*{PartialEnding}{OldEnding}");
        if (aside.Length > 0) Directory.Move(aside.MaxBy(Directory.GetLastWriteTimeUtc)!, folder.Merged);
    }

    private void Replace(string partial)
    {
        if (!Directory.Exists(folder.Merged))
        {
            Directory.Move(partial, folder.Merged);
            return;
        }

        if (!File.Exists(Path.Combine(folder.Merged, Provenance.FileName)) && Directory.EnumerateFileSystemEntries(folder.Merged).Any())
            throw new InputError(
                new InputPlace("--out"), $"the folder {InputError.Quote(folder.Merged)} holds no {Provenance.FileName} of ours",
                "a folder that this program wrote");
        var old = partial + OldEnding;
        Directory.Move(folder.Merged, old);
        try
        {
            Directory.Move(partial, folder.Merged);
        }
        finally
        {
            // Where another merge was quicker, its dataset is there.
            if (Directory.Exists(folder.Merged)) Directory.Delete(old, recursive: true);
        }
    }
}
