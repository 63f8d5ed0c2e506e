using System.Globalization;
using System.Text.Json;
using CanopySim.Files.Results;

namespace CanopySim.Files.Batch;

/// <summary>Writes <c>provenance.json</c>: what a dataset was made from, by which build, on which machines.</summary>
public static class Provenance
{
    public const string FileName = "provenance.json";

    public static string Json(
        BatchPlan plan, PlanItems items, PlanHashes hashes, IReadOnlyList<ShardManifest> shards, int rows, int missingShards) =>
        new JsonFile()
            .Text("batch", plan.Name)
            .Text("plan_sha256", hashes.Plan)
            .Text("plan_file_sha256", InputHashes.OfFile(plan.Path))
            .Text("engine_version", SummaryJson.EngineVersion)
            .Text("engine_build", PlanHashes.EngineBuild)
            .Text("quality", plan.Quality.ToString().ToLowerInvariant())
            .Seed("seed", plan.Seed)
            .Whole("replicates", plan.Replicates)
            .Whole("items", items.Count)
            .Whole("rows", rows)
            .Whole("failed", shards.Sum(shard => shard.Failed))
            .Whole("missing_shards", missingShards)
            .Text("seasons_schema", hashes.SeasonsSchema)
            .Text("courses_schema", hashes.CoursesSchema)
            .Text("merged_utc", DateTime.UtcNow.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture))
            .List("varied", plan.Varied, (inner, key) => inner.Text("key", key.Key).Text("unit", key.Unit).Text("how", key.Words))
            .Object("design", inner =>
            {
                if (plan.Design is { } design)
                    inner.Text("kind", Scenarios.KeyNames.Choice(design.Kind)).Whole("size", design.Size).Whole("levels", design.Levels);
            })
            .List("inputs", hashes.Inputs, (inner, input) => inner.Text("path", input.Path).Text("sha256", input.Sha256))
            .List("machines", shards.GroupBy(shard => shard.Machine).OrderBy(group => group.Key, StringComparer.Ordinal), (inner, group) => inner
                .Text("name", group.Key)
                .Whole("shards", group.Count())
                .Number("core_seconds", group.Sum(shard => shard.Seconds)))
            .List("shards", shards, (inner, shard) => inner
                .Whole("shard", shard.Shard)
                .Text("inputs_sha256", shard.InputsSha256)
                .Text("seasons_sha256", shard.Seasons.Sha256)
                .Text("courses_sha256", shard.Courses.Sha256)
                .Text("written_utc", shard.WrittenUtc))
            .Finish();

    /// <summary>What a dataset was merged from: hash of the plan, and how many of its shards were missing; null where there is no dataset.</summary>
    public static (string? Plan, int MissingShards)? Of(string merged)
    {
        var path = Path.Combine(merged, FileName);
        if (!File.Exists(path)) return null;
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(path));
            return (json.RootElement.GetProperty("plan_sha256").GetString(), json.RootElement.GetProperty("missing_shards").GetInt32());
        }
        catch (Exception error) when (error is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return null;
        }
    }
}
