using System.ComponentModel;
using System.Globalization;
using CanopySim.Files.Batch;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim batch merge</c>: one dataset of all shards.</summary>
public sealed class BatchMergeCommand : Command<BatchMergeCommand.Settings>
{
    private const int MostNamed = 10;

    public sealed class Settings : BatchSettings
    {
        [CommandOption("--incomplete")]
        [Description("Merges what there is, though shards are missing.")]
        public bool Incomplete { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var batch = OpenBatch.Read(settings);
        var merge = new BatchMerge(batch.Plan, batch.Items, batch.Folder, batch.Hashes, batch.Seasons);
        var outcome = merge.Run(settings.Incomplete, cancellationToken);
        var missing = outcome.Unusable.Count;
        foreach (var (shard, why) in outcome.Unusable.Take(MostNamed)) Say($"shard {shard}: {why}");
        if (missing > MostNamed) Say($"and {missing - MostNamed} more");
        if (missing > 0 && !settings.Incomplete)
        {
            Say($"{missing} of {batch.Items.Shards} shards cannot be merged; nothing was written. "
                + $"'canopysim batch run {settings.Plan}' grows them, --incomplete merges the rest");
            return RunnerApp.SomeFailed;
        }

        if (!settings.Quiet)
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{outcome.Seasons} seasons in {outcome.Files} files, {outcome.Failed} failed: {batch.Folder.Merged}"));
        if (outcome.PageFault.Length > 0)
            Say($"the tables are merged, but {BatchMerge.ReportFile} could not be written: {outcome.PageFault}");
        return missing > 0 || outcome.Failed > 0 || outcome.PageFault.Length > 0 ? RunnerApp.SomeFailed : RunnerApp.Ok;

        static void Say(string what) => Console.Error.WriteLine($"canopysim: {what}");
    }
}
