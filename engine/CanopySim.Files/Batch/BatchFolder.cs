using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using CanopySim.Files.Results;

namespace CanopySim.Files.Batch;

/// <summary>Whether a shard's data can be used.</summary>
public enum ShardState
{
    Missing,
    Complete,

    /// <summary>Made from other inputs, by another build of the model, or with other columns.</summary>
    Stale,

    /// <summary>Its data are not what its manifest says.</summary>
    Damaged,
}

/// <summary>What was found of a shard.</summary>
/// <param name="State">Whether it can be used.</param>
/// <param name="Manifest">Its manifest; null where it is missing.</param>
/// <param name="Reason">Why it cannot be used, in words.</param>
public sealed record FoundShard(ShardState State, ShardManifest? Manifest, string Reason = "");

/// <summary>
/// The folder of a batch: <c>batch.json</c> names the plan, <c>shards/00001.*</c> are data and manifest of each shard. Any
/// number of processes may write into it.
/// </summary>
public sealed class BatchFolder
{
    public const string FileName = "batch.json";

    private const string ManifestEnding = ".json";
    private const string PartialMark = ".partial";

    private readonly BatchPlan _plan;
    private readonly PlanItems _items;
    private readonly PlanHashes _hashes;
    private readonly SeasonsTable _seasons;
    private int _partials;

    public BatchFolder(string path, BatchPlan plan, PlanItems items, PlanHashes hashes, SeasonsTable seasons)
    {
        (Path, _plan, _items, _hashes, _seasons) = (path, plan, items, hashes, seasons);
        CheckOurs();
    }

    public string Path { get; }

    public string Shards => System.IO.Path.Combine(Path, "shards");

    /// <summary>Where the merged tables are.</summary>
    public string Merged => System.IO.Path.Combine(Path, "merged");

    /// <summary>Makes the folder, and writes which plan it belongs to.</summary>
    /// <exception cref="TryAgainException">It cannot be written.</exception>
    public void Prepare()
    {
        var json = new JsonFile()
            .Text("batch", _plan.Name)
            .Text("plan_sha256", _hashes.Plan)
            .Text("engine_version", SummaryJson.EngineVersion)
            .Text("engine_build", PlanHashes.EngineBuild)
            .Text("quality", _plan.Quality.ToString().ToLowerInvariant())
            .Whole("items", _items.Count)
            .Whole("shards", _items.Shards)
            .Whole("items_per_shard", _plan.ItemsPerShard)
            .Text("seasons_schema", _hashes.SeasonsSchema)
            .Text("courses_schema", _hashes.CoursesSchema)
            .List("inputs", _hashes.Inputs, (inner, input) => inner.Text("path", input.Path).Text("sha256", input.Sha256));
        MakeFolder(Path);
        DurableFile.RemoveAbandoned(Path);
        // The name first: a run that comes while this one prepares finds a folder of ours, or nothing but a file half-written.
        DurableFile.Publish(System.IO.Path.Combine(Path, FileName), System.Text.Encoding.UTF8.GetBytes(json.Finish()));
        MakeFolder(Shards);
        DurableFile.RemoveAbandoned(Shards);
    }

    /// <summary>Looks at a shard: manifest, what it was made from, and every byte of its data.</summary>
    public FoundShard Find(int shard)
    {
        var path = ManifestPath(Name(shard));
        if (!File.Exists(path)) return new FoundShard(ShardState.Missing, null);
        if (ShardManifest.Read(path) is not { IsComplete: true } manifest)
            return new FoundShard(ShardState.Damaged, null, "its manifest cannot be read");
        if (WhyStale(shard, manifest) is { } stale) return new FoundShard(ShardState.Stale, manifest, stale);
        return WhyDamaged(manifest) is { } damaged
            ? new FoundShard(ShardState.Damaged, manifest, damaged)
            : new FoundShard(ShardState.Complete, manifest);
    }

    /// <summary>Items of a shard that earlier runs had grown when they were stopped.</summary>
    public IReadOnlyList<ItemRows> FindPartial(int shard, out double seconds)
    {
        seconds = 0;
        var found = new SortedDictionary<int, ItemRows>();
        if (!Directory.Exists(Shards)) return [];
        foreach (var path in Directory.GetFiles(Shards, $"{Name(shard)}.*{PartialMark}{ManifestEnding}").Order(StringComparer.Ordinal))
        {
            if (ShardManifest.Read(path) is not { } manifest || WhyStale(shard, manifest) is not null) continue;
            try
            {
                var (fresh, all) = (0, 0);
                foreach (var rows in RowsOf(manifest))
                {
                    all++;
                    if (found.TryAdd(rows.Item, rows)) fresh++;
                }

                // A later part holds what an earlier one held, and its time.
                if (all > 0) seconds += manifest.Seconds * fresh / all;
            }
            catch (Exception error) when (error is IOException or InvalidDataException)
            {
                // Another run finished the shard and removed this meanwhile.
            }
        }

        return [.. found.Values];
    }

    /// <summary>Items of a shard that could be grown, and the time that they took, the same for each [s].</summary>
    /// <exception cref="InvalidDataException">Its data are not what its manifest says.</exception>
    public (IReadOnlyList<ItemRows> Rows, double Seconds) Grown(ShardManifest manifest)
    {
        var rows = RowsOf(manifest).ToList();
        var grown = rows.Where(item => item.Failure is null).ToList();
        return (grown, rows.Count > 0 ? manifest.Seconds * grown.Count / rows.Count : 0);
    }

    /// <summary>Publishes a shard: data, then manifest; then nothing partial of it is needed.</summary>
    /// <exception cref="TryAgainException">It cannot be written.</exception>
    public void Publish(int shard, IReadOnlyList<ItemRows> rows, double seconds)
    {
        Write(shard, Name(shard), rows, seconds, ShardManifest.CompleteStatus);
        foreach (var path in Directory.GetFiles(Shards, $"{Name(shard)}.*{PartialMark}.*")) DurableFile.Remove(path);
    }

    /// <summary>Publishes what a shard has so far, and returns its name; an earlier part by this process is removed.</summary>
    /// <exception cref="TryAgainException">It cannot be written.</exception>
    public string PublishPartial(int shard, IReadOnlyList<ItemRows> rows, double seconds, string? earlier)
    {
        var number = Interlocked.Increment(ref _partials);
        var name = string.Create(CultureInfo.InvariantCulture, $"{Name(shard)}.{DurableFile.Writer}-{number}{PartialMark}");
        Write(shard, name, rows, seconds, ShardManifest.PartialStatus);
        if (earlier is not null)
            foreach (var path in Directory.GetFiles(Shards, $"{earlier}.*")) DurableFile.Remove(path);
        return name;
    }

    /// <summary>Tables of a complete shard.</summary>
    /// <exception cref="InvalidDataException">They are not what they should be.</exception>
    public (TableData Seasons, TableData Courses) Tables(ShardManifest manifest) =>
        (ReadTable(manifest.Seasons, _seasons.Schema), ReadTable(manifest.Courses, CoursesTable.Schema));

    /// <summary>Numbers of shards of an earlier, longer plan that lie in the folder.</summary>
    public IReadOnlyList<int> Surplus() => !Directory.Exists(Shards) ? [] :
        [.. Directory.GetFiles(Shards, $"*{ManifestEnding}")
            .Select(path => System.IO.Path.GetFileNameWithoutExtension(path))
            .Where(name => int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > _items.Shards)
            .Select(name => int.Parse(name, CultureInfo.InvariantCulture)).Order()];

    private void Write(int shard, string name, IReadOnlyList<ItemRows> rows, double seconds, string status)
    {
        var (seasons, courses) = (new TableData(_seasons.Schema), new TableData(CoursesTable.Schema));
        foreach (var item in rows)
        {
            if (item.Season is { } season) seasons.Add(season);
            foreach (var row in item.Courses) courses.Add(row);
        }

        var (first, last) = _items.ShardItems(shard);
        ItemFailure[] failures = [.. rows.Where(item => item.Failure is not null).Select(item => new ItemFailure(item.Item, item.Failure!))];
        var manifest = new ShardManifest
        {
            Plan = _plan.Name,
            PlanSha256 = _hashes.Plan,
            InputsSha256 = _hashes.OfShard(shard),
            EngineVersion = SummaryJson.EngineVersion,
            EngineBuild = PlanHashes.EngineBuild,
            SeasonsSchema = _hashes.SeasonsSchema,
            CoursesSchema = _hashes.CoursesSchema,
            Shard = shard,
            FirstItem = first,
            LastItem = last,
            Status = status,
            Failed = failures.Length,
            Failures = failures,
            Seasons = WriteTable($"{name}.seasons.parquet", seasons),
            Courses = WriteTable($"{name}.courses.parquet", courses),
            Seconds = Math.Round(seconds, 3),
            Machine = Environment.MachineName,
            WrittenUtc = DateTime.UtcNow.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture),
        };
        DurableFile.Publish(ManifestPath(name), manifest.Bytes());
    }

    private DataFile WriteTable(string name, TableData table)
    {
        var bytes = ParquetTable.Bytes(table);
        DurableFile.Publish(System.IO.Path.Combine(Shards, name), bytes);
        return new DataFile(name, Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes.Length, table.Rows);
    }

    private IEnumerable<ItemRows> RowsOf(ShardManifest manifest)
    {
        var (seasons, courses) = Tables(manifest);
        var coursesOf = Enumerable.Range(0, courses.Rows).ToLookup(row => (int)courses.Numbers(0)[row]!.Value);
        for (var row = 0; row < seasons.Rows; row++)
        {
            var item = (int)seasons.Numbers(0)[row]!.Value;
            yield return new ItemRows(item, seasons.Row(row), [.. coursesOf[item].Select(courses.Row)], null);
        }

        foreach (var failure in manifest.Failures) yield return new ItemRows(failure.Item, null, [], failure.Message);
    }

    // What was looked at a while ago may have changed since: the bytes that are used are those that are checked.
    private TableData ReadTable(DataFile file, TableSchema schema)
    {
        var bytes = File.ReadAllBytes(System.IO.Path.Combine(Shards, System.IO.Path.GetFileName(file.Name)));
        if (Convert.ToHexStringLower(SHA256.HashData(bytes)) != file.Sha256)
            throw new InvalidDataException($"{file.Name} is not what was written");
        return ParquetTable.Read(bytes, schema);
    }

    private string? WhyStale(int shard, ShardManifest manifest)
    {
        if (manifest.EngineBuild != PlanHashes.EngineBuild) return "another build of the model made it";
        if (manifest.SeasonsSchema != _hashes.SeasonsSchema || manifest.CoursesSchema != _hashes.CoursesSchema)
            return "its tables have other columns";
        return manifest.InputsSha256 == _hashes.OfShard(shard) ? null : "plan, scenario or weather has changed since";
    }

    private string? WhyDamaged(ShardManifest manifest)
    {
        foreach (var file in new[] { manifest.Seasons, manifest.Courses })
        {
            var path = System.IO.Path.Combine(Shards, System.IO.Path.GetFileName(file.Name));
            if (!File.Exists(path)) return $"{file.Name} is not there";
            var length = new FileInfo(path).Length;
            if (length != file.Bytes)
                return string.Create(CultureInfo.InvariantCulture, $"{file.Name} has {length} bytes of {file.Bytes}");
            if (InputHashes.OfFile(path) != file.Sha256) return $"{file.Name} is not what was written";
        }

        return null;
    }

    private void CheckOurs()
    {
        var place = new InputPlace("--out");
        if (File.Exists(Path)) throw new InputError(place, $"{InputError.Quote(Path)} is a file", "a folder for the batch");
        if (!Directory.Exists(Path) || Directory.EnumerateFileSystemEntries(Path).All(DurableFile.IsHalfWritten)) return;
        var named = NamedPlan(System.IO.Path.Combine(Path, FileName));
        if (named == _plan.Name) return;
        throw new InputError(
            place,
            named is null
                ? $"the folder {InputError.Quote(Path)} exists and holds no {FileName} of ours"
                : $"the folder {InputError.Quote(Path)} holds the batch {InputError.Quote(named)}",
            $"a new folder, or that of the batch {InputError.Quote(_plan.Name)}");
    }

    private void MakeFolder(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw DurableFile.Unwritable(Path, error);
        }
    }

    private static string? NamedPlan(string path)
    {
        if (!File.Exists(path)) return null;
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(path));
            return json.RootElement.TryGetProperty("plan_sha256", out _) && json.RootElement.TryGetProperty("batch", out var name)
                ? name.GetString()
                : null;
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private string ManifestPath(string name) => System.IO.Path.Combine(Shards, name + ManifestEnding);

    private static string Name(int shard) => shard.ToString("00000", CultureInfo.InvariantCulture);
}
