using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using CanopySim.Light;
using static CanopySim.Bench.Tables;

namespace CanopySim.Bench;

/// <summary><c>stages</c>: runs <see cref="StageBench"/> quietly and prints a row a stage for the README beside this.</summary>
internal static class StageCommand
{
    public static int Run()
    {
        var artifacts = Path.Combine(Path.GetTempPath(), $"stages-{Environment.ProcessId}");
        var quiet = ManualConfig.CreateEmpty().AddLogger(NullLogger.Instance).WithArtifactsPath(artifacts);
        Summary summary;
        try
        {
            summary = BenchmarkRunner.Run<StageBench>(quiet);
        }
        finally
        {
            if (Directory.Exists(artifacts)) Directory.Delete(artifacts, recursive: true);
        }

        var cases = summary.Reports.Select(report => (
            Stage: report.BenchmarkCase.Descriptor.WorkloadMethodDisplayInfo.Trim('\''),
            Quality: (Quality)report.BenchmarkCase.Parameters[nameof(StageBench.Quality)],
            Threads: (int)report.BenchmarkCase.Parameters[nameof(StageBench.Threads)],
            report.ResultStatistics)).ToArray();
        var columns = cases.Select(run => (run.Quality, run.Threads)).Distinct().Order().ToArray();
        Console.WriteLine($"Time gone by [ms], median; least of {cases.Max(run => run.ResultStatistics?.N ?? 0)}, on the canopy of `first-season` on 20 July. {Machine.Line}");
        foreach (var quality in columns.Select(column => column.Quality).Distinct())
        {
            var (scene, sampling) = (StageBench.SceneFor(quality), LightQuality.For(quality));
            Console.WriteLine($"{quality}: {GrownBlock.LeavesIn(scene)} leaves, {scene.TriangleCount} triangles, {sampling.SkyDirectionCount} directions, pixels of {Pixels(sampling)}.");
        }

        PrintHeader(["stage", .. columns.Select(column => $"{column.Quality}, {column.Threads} thread{(column.Threads == 1 ? "" : "s")}".ToLowerInvariant())]);
        foreach (var stage in cases.GroupBy(run => run.Stage))
        {
            Row([stage.Key, .. columns.Select(column =>
                stage.Single(run => (run.Quality, run.Threads) == column).ResultStatistics is { } times ? Text($"{times.Median / 1e6:0.0}; {times.Min / 1e6:0.0}") : "failed")]);
        }

        return cases.All(run => run.ResultStatistics is not null) ? 0 : 1;
    }
}
