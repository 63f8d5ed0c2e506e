using System.ComponentModel;
using System.Globalization;
using System.Runtime.InteropServices;
using CanopySim.Files;
using CanopySim.Files.Batch;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim batch run</c>: grows the seasons of a plan, one a core.</summary>
public sealed class BatchRunCommand : Command<BatchRunCommand.Settings>
{
    public sealed class Settings : BatchSettings
    {
        [CommandOption("--threads <N>")]
        [Description("Seasons at once; all cores, or those that Slurm gave to the task, by default.")]
        public string? Threads { get; init; }

        [CommandOption("--task <K>")]
        [Description("Grows one part of several of the plan, as a task of a job array does; from 0.")]
        public string? Task { get; init; }

        [CommandOption("--tasks <N>")]
        [Description("How many parts.")]
        public string? Tasks { get; init; }

        [CommandOption("--retry-failed")]
        [Description("Tries items again that failed in an earlier run.")]
        public bool RetryFailed { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var threads = NumberOption.Whole(settings.Threads, "--threads", 1, 1024) ?? OpenBatch.CoresOfTask;
        var batch = OpenBatch.Read(settings);
        var shards = ShardsOf(settings, batch.Items.Shards);
        using var stopNow = new SecondSignal();
        using var lines = new BatchProgressLines(settings.Quiet);
        var run = new BatchRun(
            batch.Items, batch.Folder, new ItemSeason(batch.Plan, batch.Items, threads),
            new BatchRunOptions(threads, shards, settings.RetryFailed), Show, Say);
        foreach (var surplus in batch.Folder.Surplus().Take(1))
            Say(string.Create(CultureInfo.InvariantCulture, $"shards from {surplus} on are of a longer plan and not used"));
        var done = run.Run(cancellationToken, stopNow.Token);
        lines.End(done);
        if (done.Done < done.Items)
        {
            Console.Error.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"canopysim: stopped; {done.Done} of {done.Items} seasons are kept in {settings.Out ?? batch.Folder.Path}: the same command goes on"));
            return RunnerApp.Stopped;
        }

        if (!settings.Quiet) Tell(done, batch, shards.Count);
        return done.Failed > 0 ? RunnerApp.SomeFailed : RunnerApp.Ok;

        void Show(BatchProgress progress) => lines.Show(progress);

        void Say(string what) => Console.Error.WriteLine($"canopysim: {what}");
    }

    // Neighbors share weather, so a task takes neighbors.
    private static IReadOnlyList<int> ShardsOf(Settings settings, int shards)
    {
        var tasks = NumberOption.Whole(settings.Tasks, "--tasks", 1, int.MaxValue);
        var task = NumberOption.Whole(settings.Task, "--task", 0, (tasks ?? 1) - 1);
        if (task is null != tasks is null)
            throw new InputError(
                new InputPlace(task is null ? "--tasks" : "--task"), "one of --task and --tasks", "both, or neither");
        return TaskShards.Of(task ?? 0, tasks ?? 1, shards);
    }

    private static void Tell(BatchProgress done, OpenBatch batch, int shards)
    {
        var text = string.Create(
            CultureInfo.InvariantCulture,
            $"{done.Items} seasons in {shards} shards: {done.Grown} grown now, {done.Kept} kept from before, {done.Failed} failed. They are in {batch.Folder.Path}.");
        Console.WriteLine(text);
        if (done.Failed > 0) Console.WriteLine("canopysim batch status tells which items failed, and why.");
    }

    /// <summary>The second signal gives up what still grows; the first one lets it finish.</summary>
    private sealed class SecondSignal : IDisposable
    {
        private readonly CancellationTokenSource _source = new();
        private readonly List<PosixSignalRegistration> _registrations = [];
        private int _signals;

        public SecondSignal()
        {
            foreach (var signal in new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP })
                _registrations.Add(PosixSignalRegistration.Create(signal, Count));
        }

        public CancellationToken Token => _source.Token;

        public void Dispose()
        {
            foreach (var registration in _registrations) registration.Dispose();
            _source.Dispose();
        }

        private void Count(PosixSignalContext context)
        {
            context.Cancel = true;
            if (Interlocked.Increment(ref _signals) == 2) _source.Cancel();
        }
    }
}
