using System.Security.Cryptography;
using System.Text.Json;
using Xunit;

namespace CanopySim.Runner.Tests.Batch;

/// <summary>
/// A plan of short, cheap seasons in a folder of its own: the first days of first-season's leaves. What its shards hold is
/// compared byte by byte.
/// </summary>
internal sealed class BatchFiles : IDisposable
{
    /// <summary>Seasons of the plan.</summary>
    public const int Items = 60;

    /// <summary>Shards of the plan.</summary>
    public const int Shards = 15;

    private const string Plan = """
        name: short
        scenarios: [scenario.yaml]
        vary:
          rows.spacing: {values: [2 m, 2.4 m, 2.8 m]}
          growth.vigor_spread: {distribution: uniform, from: 0.05, to: 0.2}
        design: {kind: latin_hypercube, points: 10}
        replicates: 2
        seed: 3
        until: 04-18
        shard: {items: 4}

        """;

    private readonly TemporaryFolder _folder = new();

    public BatchFiles(string plan = Plan)
    {
        foreach (var name in new[] { "scenario.yaml", "weather.csv" })
            File.Copy(Path.Combine(Path.GetDirectoryName(RunnerProcess.FirstSeason)!, name), _folder.File(name));
        _folder.Write("plan.yaml", plan);
    }

    public string Folder => _folder.Path;

    public string At(params string[] names) => Path.Combine([_folder.Path, .. names]);

    public string Read(string name) => File.ReadAllText(At(name));

    public void Write(string name, string text) => _folder.Write(name, text);

    public RunnerOutcome Batch(string command, params string[] options) => RunnerProcess.Run(Folder, ["batch", command, "plan.yaml", .. options]);

    public string ShardsOf(string results) => At(results, "shards");

    /// <summary>Hash of each shard's data, by name; the manifests, which hold times, are not in it.</summary>
    public IReadOnlyDictionary<string, string> DataOf(string results) =>
        Directory.GetFiles(ShardsOf(results), "*.parquet").Order(StringComparer.Ordinal)
            .ToDictionary(path => Path.GetFileName(path)!, path => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(path))));

    /// <summary>All that was published so far is whole and is what the reference has.</summary>
    public int AssertNothingWrong(string results, IReadOnlyDictionary<string, string> reference)
    {
        var complete = 0;
        foreach (var path in Directory.GetFiles(ShardsOf(results), "?????.json"))
        {
            using var manifest = JsonDocument.Parse(File.ReadAllBytes(path));
            foreach (var table in new[] { "seasons", "courses" })
            {
                var data = manifest.RootElement.GetProperty(table);
                var name = data.GetProperty("name").GetString()!;
                var bytes = File.ReadAllBytes(Path.Combine(ShardsOf(results), name));
                Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), data.GetProperty("sha256").GetString());
                Assert.Equal(reference[name], Convert.ToHexString(SHA256.HashData(bytes)));
            }

            complete++;
        }

        return complete;
    }

    public void Dispose() => _folder.Dispose();
}
