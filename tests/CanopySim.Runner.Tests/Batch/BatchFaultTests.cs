using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace CanopySim.Runner.Tests.Batch;

/// <summary>
/// Batches that are stopped, killed, starved of disk, or run twice at once: once they go on to their end no row is lost, none is
/// double and none is stale.
/// </summary>
[Collection(nameof(BatchCollection))]
public sealed partial class BatchFaultTests(BatchReference reference) : IDisposable
{
    private const int Rounds = 5;

    private static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(2);

    private readonly BatchFiles _files = new();

    public void Dispose() => _files.Dispose();

    // Moments are seeded, from the first sign of work; how far a run is by then differs from machine to machine, so that
    // together with the rounds many places are met.
    [Fact]
    public void KilledAtAnyMomentItGoesOnWithoutLoss() => KillAndGoOn(20261128);

    [Fact]
    public void TerminatedAtAnyMomentItKeepsEverySeasonThatWasFinished() => TerminateAndGoOn(4711);

#if FAULTS
    // Fifty kills in all, for bench/faults.sh: too long for every day.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void KilledAtFiftyMoments(int seed)
    {
        KillAndGoOn(seed);
        Directory.Delete(_files.At("results/short"), recursive: true);
        TerminateAndGoOn(seed);
    }
#endif

    private void KillAndGoOn(int seed)
    {
        var moments = new Random(seed);
        var before = 0;
        for (var round = 0; round < Rounds; round++)
        {
            var run = Interrupted("KILL", TimeSpan.FromSeconds(moments.NextDouble() * 2));
            Assert.NotEqual(RunnerApp.BadInput, run.ExitCode);
            var complete = _files.AssertNothingWrong("results/short", reference.Data);
            Assert.True(complete >= before, $"{complete} shards after {before}");
            before = complete;
        }

        FinishAndCompare();
    }

    private void TerminateAndGoOn(int seed)
    {
        var moments = new Random(seed);
        var kept = 0;
        for (var round = 0; round < Rounds; round++)
        {
            var run = Interrupted("TERM", TimeSpan.FromSeconds(moments.NextDouble() * 1.5));
            if (run.ExitCode == RunnerApp.Ok)
            {
                kept = BatchFiles.Items;
                break;
            }

            Assert.True(run.ExitCode == RunnerApp.Stopped, run.ToString());
            var stopped = Stopped().Match(run.Error);
            Assert.True(stopped.Success, run.ToString());
            var now = int.Parse(stopped.Groups["done"].ValueSpan, CultureInfo.InvariantCulture);
            Assert.True(now >= kept, $"{now} kept after {kept}");
            kept = now;
            _files.AssertNothingWrong("results/short", reference.Data);
            Assert.Empty(Directory.GetFiles(_files.ShardsOf("results/short"), ".*"));
        }

        // Not one that was reported as kept is grown again.
        var end = FinishAndCompare();
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{BatchFiles.Items - kept} grown now, {kept} kept from before"), end.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoRunsInOneFolderDoNoHarm()
    {
        var runs = new RunnerOutcome[2];
        Parallel.For(0, 2, i => runs[i] = _files.Batch("run", "--threads", "2"));
        Assert.All(runs, run => Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString()));
        FinishAndCompare();
    }

    [Fact]
    public void ATruncatedShardIsNamedAndGrownAgain()
    {
        Copy();
        var path = Path.Combine(_files.ShardsOf("results/short"), "00003.seasons.parquet");
        File.WriteAllBytes(path, File.ReadAllBytes(path)[..100]);
        var merge = _files.Batch("merge");
        Assert.Equal(RunnerApp.SomeFailed, merge.ExitCode);
        Assert.Contains("shard 3: 00003.seasons.parquet has 100 bytes of ", merge.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_files.At("results/short/merged")));
        var run = FinishAndCompare();
        Assert.Contains("shard 3 is grown again: 00003.seasons.parquet has 100 bytes", run.Error, StringComparison.Ordinal);
        Assert.Contains("4 grown now, 56 kept from before", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AChangedScenarioIsSaidAndNothingStaleIsMerged()
    {
        Copy();
        _files.Write("scenario.yaml", _files.Read("scenario.yaml") + "\ngrowth: {base_temperature: 6 degC}\n");
        var status = _files.Batch("status");
        Assert.Equal(RunnerApp.SomeFailed, status.ExitCode);
        Assert.Contains("15 stale", status.Output, StringComparison.Ordinal);
        var merge = _files.Batch("merge");
        Assert.Equal(RunnerApp.SomeFailed, merge.ExitCode);
        Assert.Contains("shard 1: plan, scenario or weather has changed since", merge.Error, StringComparison.Ordinal);
        var run = _files.Batch("run");
        Assert.Contains("60 grown now, 0 kept from before", run.Output, StringComparison.Ordinal);
        var data = _files.DataOf("results/short");
        Assert.All(data, file => Assert.NotEqual(reference.Data[file.Key], file.Value));
        Assert.Equal(RunnerApp.Ok, _files.Batch("merge").ExitCode);
    }

    // The limit of a file's size stands for a full disk: a write is cut short and fails in the middle of a shard. The runtime
    // holds its code in files of memory, which the limit would meet too, unless it is told not to.
    [Fact]
    public void ADiskThatIsFullIsTriedAgain()
    {
        var full = Shell("export DOTNET_EnableWriteXorExecute=0; trap '' XFSZ; ulimit -f 8; exec \"$@\"");
        Assert.True(full.ExitCode == RunnerApp.TryAgain, full.ToString());
        Assert.Contains("cannot be written now", full.Error, StringComparison.Ordinal);
        Assert.Equal(0, _files.AssertNothingWrong("results/short", reference.Data));
        Assert.Empty(Directory.GetFiles(_files.ShardsOf("results/short"), ".*"));
        FinishAndCompare();
    }

    [Fact]
    public void AFullFileSystemIsTriedAgain()
    {
        // A small file system of its own, where the machine lets one be mounted; the size limit above stands in elsewhere.
        var mounted = Shell(
            "mkdir -p tiny && unshare --mount sh -c 'mount -t tmpfs -o size=300k tmpfs tiny 2>/dev/null || exit 99; \"$@\"; code=$?; "
                + "ls -a tiny/short/shards > left.txt; exit $code' sh \"$@\"",
            "--out", "tiny/short");
        if (mounted.ExitCode is 99 or 1 && !File.Exists(_files.At("left.txt")))
        {
            // Then the limit is met here too, so that some full disk was.
            ADiskThatIsFullIsTriedAgain();
            return;
        }

        Assert.True(mounted.ExitCode == RunnerApp.TryAgain, mounted.ToString());
        Assert.Contains("No space left on device", mounted.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(".tmp", _files.Read("left.txt"), StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatCannotBeWrittenIsTriedAgain()
    {
        // Root may write anywhere, unless it gives that right away.
        var drop = Environment.UserName == "root" ? "setpriv --bounding-set=-dac_override --inh-caps=-dac_override" : "";
        var run = Shell($"mkdir locked && chmod 555 locked && exec {drop} \"$@\"", "--out", "locked/short");
        Assert.True(run.ExitCode == RunnerApp.TryAgain, run.ToString());
        Assert.Contains("\"locked/short\" cannot be written now", run.Error, StringComparison.Ordinal);
    }

    private RunnerOutcome FinishAndCompare()
    {
        var run = _files.Batch("run");
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        Assert.Equal(reference.Data, _files.DataOf("results/short"));
        Assert.Equal(3 * BatchFiles.Shards, Directory.GetFileSystemEntries(_files.ShardsOf("results/short")).Length);
        var merge = _files.Batch("merge");
        Assert.True(merge.ExitCode == RunnerApp.Ok, merge.ToString());
        Assert.Contains($"{BatchFiles.Items} seasons in 2 files, 0 failed", merge.Output, StringComparison.Ordinal);
        return run;
    }

    // A finished batch, as the reference left it.
    private void Copy()
    {
        Directory.CreateDirectory(_files.ShardsOf("results/short"));
        File.Copy(Path.Combine(reference.Results, "batch.json"), _files.At("results/short/batch.json"));
        foreach (var path in Directory.GetFiles(Path.Combine(reference.Results, "shards")))
            File.Copy(path, Path.Combine(_files.ShardsOf("results/short"), Path.GetFileName(path)));
    }

    private RunnerOutcome Interrupted(string signal, TimeSpan after)
    {
        Task? interrupting = null;
        var run = RunnerProcess.Run(
            _files.Folder,
            process => interrupting = Task.Run(() => Interrupt(process, signal, after)),
            "batch", "run", "plan.yaml", "--threads", "2");
        interrupting!.GetAwaiter().GetResult();
        return run;
    }

    // From the moment that it has prepared its folder: what comes before is the start of the runtime.
    private void Interrupt(Process process, string signal, TimeSpan after)
    {
        var marker = _files.At("results/short/batch.json");
        var began = Stopwatch.StartNew();
        var written = File.Exists(marker) ? File.GetLastWriteTimeUtc(marker) : DateTime.MinValue;
        while (!Ended(process) && (!File.Exists(marker) || File.GetLastWriteTimeUtc(marker) == written) && began.Elapsed < LongestStart)
            Thread.Sleep(10);
        Thread.Sleep(after);
        if (Ended(process)) return;
        try
        {
            using var kill = Process.Start("kill", [$"-{signal}", process.Id.ToString(CultureInfo.InvariantCulture)]);
            kill.WaitForExit();
        }
        catch (InvalidOperationException)
        {
            // It had come to its end, and who waited for it let it go.
        }
    }

    // Who waits for a process lets it go when it ends.
    private static bool Ended(Process process)
    {
        try
        {
            return process.HasExited;
        }
        catch (InvalidOperationException)
        {
            return true;
        }
    }

    // The program within a shell that limits it first.
    private RunnerOutcome Shell(string script, params string[] options) =>
        RunnerProcess.Shell(_files.Folder, script, ["batch", "run", "plan.yaml", "--threads", "2", .. options]);

    [GeneratedRegex(@"stopped; (?<done>[0-9]+) of 60 seasons are kept")]
    private static partial Regex Stopped();
}
