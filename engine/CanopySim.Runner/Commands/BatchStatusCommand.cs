using System.ComponentModel;
using System.Globalization;
using CanopySim.Files.Batch;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim batch status</c>: what of a batch is done, by its manifests.</summary>
public sealed class BatchStatusCommand : Command<BatchStatusCommand.Settings>
{
    private const int MostNamed = 20;

    public sealed class Settings : BatchSettings
    {
        [CommandOption("--all")]
        [Description("Names every failed item and every shard that is not done, not only the first twenty.")]
        public bool All { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var batch = OpenBatch.Read(settings);
        var found = Enumerable.Range(1, batch.Items.Shards).Select(shard => (Shard: shard, Found: batch.Folder.Find(shard))).ToList();
        var complete = found.Where(one => one.Found.State == ShardState.Complete).Select(one => one.Found.Manifest!).ToList();
        var done = complete.Sum(manifest => manifest.LastItem - manifest.FirstItem + 1);
        List<ItemRows> partial = [.. found.Where(one => one.Found.State != ShardState.Complete)
            .SelectMany(one => batch.Folder.FindPartial(one.Shard, out _))];
        List<ItemFailure> failures = [.. complete.SelectMany(manifest => manifest.Failures),
            .. partial.Where(rows => rows.Failure is not null).Select(rows => new ItemFailure(rows.Item, rows.Failure!))];
        Line($"{batch.Plan.Name}: {done + partial.Count} of {batch.Items.Count} seasons grown, {failures.Count} of them failed; {batch.Folder.Path}");
        Line($"shards: {complete.Count} complete, {Count(ShardState.Missing)} to be grown, {Count(ShardState.Stale)} stale, {Count(ShardState.Damaged)} damaged; {partial.Count} seasons in unfinished ones");
        if (done > 0)
            Line($"a season took {complete.Sum(manifest => manifest.Seconds) / done:0.00} s of a core, on {string.Join(", ", complete.Select(manifest => manifest.Machine).Distinct().Order(StringComparer.Ordinal))}");
        Console.WriteLine(Provenance.Of(batch.Folder.Merged) switch
        {
            null => "not merged",
            var (plan, _) when plan != batch.Hashes.Plan => $"merged from an earlier state of the plan: {batch.Folder.Merged}",
            (_, > 0 and var missing) => string.Create(
                CultureInfo.InvariantCulture, $"merged when {missing} shards were missing: {batch.Folder.Merged}"),
            _ => $"merged: {batch.Folder.Merged}",
        });
        var most = settings.All ? int.MaxValue : MostNamed;
        Name(found.Where(one => one.Found.State is ShardState.Stale or ShardState.Damaged), most, one => $"shard {one.Shard}: {one.Found.Reason}");
        Name(failures, most, failure => $"item {failure.Item} failed: {failure.Message}");
        return done == batch.Items.Count && failures.Count == 0 ? RunnerApp.Ok : RunnerApp.SomeFailed;

        int Count(ShardState state) => found.Count(one => one.Found.State == state);
    }

    private static void Name<T>(IEnumerable<T> all, int most, Func<T, string> words)
    {
        var list = all.ToList();
        foreach (var one in list.Take(most)) Console.WriteLine(words(one));
        if (list.Count > most) Line($"and {list.Count - most} more; --all names them");
    }

    private static void Line(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
