using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace CanopySim.Runner.Tests.Slurm;

/// <summary>A small plan whose seasons end in May, in four tasks of five shards of one season.</summary>
internal static partial class SlurmPlan
{
    public const int Tasks = 4;

    public const int ShardsInTask = 5;

    public static string Write(TemporaryFolder folder) => folder.Write("plan.yaml", $"""
        name: small
        scenarios: [{RunnerProcess.FirstSeason}]
        weather:
          seeds: [1 to {Tasks * ShardsInTask}]
        until: 05-31
        shard:
          items: 1
        """);

    /// <summary>Submits the plan, and returns the numbers of the array's and of the merge's job.</summary>
    public static (string Array, string Merge) Submit(SlurmCluster cluster, TemporaryFolder folder, string plan, params string[] slurm)
    {
        string[] options = [.. slurm.SelectMany(option => (string[])["--slurm", option])];
        var outcome = cluster.Canopysim(
            folder.Path, ["batch", "submit", plan, "--out", "slurm-batch", "--tasks", Tasks.ToString(CultureInfo.InvariantCulture), .. options]);
        Assert.True(outcome.ExitCode == RunnerApp.Ok, outcome.ToString());
        string[] jobs = [.. Job().Matches(outcome.Output).Select(match => match.Groups["job"].Value)];
        Assert.True(jobs.Length == 2, outcome.ToString());
        return (jobs[0], jobs[1]);
    }

    public static bool IsComplete(TemporaryFolder folder, int shard) => File.Exists(Manifest(folder, shard));

    /// <summary>When each complete shard was published.</summary>
    public static Dictionary<int, DateTime> Written(TemporaryFolder folder) =>
        Enumerable.Range(1, Tasks * ShardsInTask).Where(shard => IsComplete(folder, shard))
            .ToDictionary(shard => shard, shard => File.GetLastWriteTimeUtc(Manifest(folder, shard)));

    /// <summary>Runs the plan without Slurm and merges it.</summary>
    public static void RunHere(TemporaryFolder folder)
    {
        var plan = Write(folder);
        foreach (var command in (string[])["run", "merge"])
        {
            var outcome = RunnerProcess.Run(folder.Path, "batch", command, plan, "--out", "here");
            Assert.True(outcome.ExitCode == RunnerApp.Ok, outcome.ToString());
        }
    }

    /// <summary>Holds the cluster's merged tables to those of a run without it, byte for byte.</summary>
    public static void HeldTo(TemporaryFolder reference, TemporaryFolder folder)
    {
        var (expected, found) = (reference.File("here/merged"), folder.File("slurm-batch/merged"));
        Assert.Equal(2, Tables(expected).Length);
        Assert.Equal(Tables(expected), Tables(found));
        foreach (var table in Tables(expected))
            Assert.Equal(File.ReadAllBytes(Path.Combine(expected, table)), File.ReadAllBytes(Path.Combine(found, table)));
    }

    private static string Manifest(TemporaryFolder folder, int shard) =>
        folder.File(string.Create(CultureInfo.InvariantCulture, $"slurm-batch/shards/{shard:00000}.json"));

    private static string[] Tables(string merged) =>
        [.. Directory.GetFiles(merged, "*.parquet", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(merged, path)).Order(StringComparer.Ordinal)];

    [GeneratedRegex("^job (?<job>[0-9]+):", RegexOptions.Multiline)]
    private static partial Regex Job();
}
