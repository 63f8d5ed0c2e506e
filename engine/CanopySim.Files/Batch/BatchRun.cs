using System.Diagnostics;

namespace CanopySim.Files.Batch;

/// <summary>How a batch is run.</summary>
/// <param name="Threads">Seasons at once.</param>
/// <param name="Shards">Shards that are grown, in this order.</param>
/// <param name="RetryFailed">Whether items that failed before are tried again.</param>
public sealed record BatchRunOptions(int Threads, IReadOnlyList<int> Shards, bool RetryFailed = false)
{
    /// <summary>How often what an unfinished shard has is put on the disk.</summary>
    public TimeSpan Checkpoint { get; init; } = TimeSpan.FromMinutes(1);
}

/// <summary>How far a run is.</summary>
/// <param name="Items">Items of its shards.</param>
/// <param name="Kept">Of these, those that earlier runs had grown.</param>
/// <param name="Grown">Those that this run grew.</param>
/// <param name="Failed">Items of both that could not be grown.</param>
public readonly record struct BatchProgress(int Items, int Kept, int Grown, int Failed)
{
    public int Done => Kept + Grown;
}

/// <summary>
/// Grows the items of a plan, one season a thread, and publishes each shard when its last one is done. What is on the disk
/// already, and was made from the same inputs, is not grown again.
/// </summary>
public sealed class BatchRun
{
    private readonly PlanItems _items;
    private readonly BatchFolder _folder;
    private readonly ItemSeason _season;
    private readonly BatchRunOptions _options;
    private readonly Action<BatchProgress> _progress;
    private readonly Action<string> _say;

    private readonly Lock _lock = new();
    private readonly List<OpenShard> _open = [];
    private int _nextShard;
    private BatchProgress _done;
    private Exception? _fault;

    /// <param name="items">The plan's list.</param>
    /// <param name="folder">Where shards are.</param>
    /// <param name="season">Grows an item.</param>
    /// <param name="options">How.</param>
    /// <param name="progress">Told after each item, by whichever thread grew it, one at a time.</param>
    /// <param name="say">Told in words what is done again and why.</param>
    public BatchRun(
        PlanItems items, BatchFolder folder, ItemSeason season, BatchRunOptions options, Action<BatchProgress> progress,
        Action<string> say)
    {
        (_items, _folder, _season, _options, _progress, _say) = (items, folder, season, options, progress, say);
        _done = new BatchProgress(options.Shards.Sum(shard => Size(items.ShardItems(shard))), 0, 0, 0);
    }

    /// <summary>Runs until all is grown, or until it is stopped.</summary>
    /// <param name="stop">No further item is begun; those that grow are finished and published.</param>
    /// <param name="stopNow">Growing items are given up too; what was finished is published all the same.</param>
    /// <exception cref="TryAgainException">The folder cannot be written.</exception>
    public BatchProgress Run(CancellationToken stop, CancellationToken stopNow)
    {
        _folder.Prepare();
        _progress(_done);
        var threads = Enumerable.Range(0, _options.Threads).Select(_ => new Thread(() => Work(stop, stopNow))).ToList();
        foreach (var thread in threads) thread.Start();
        foreach (var thread in threads) thread.Join();
        PublishOpen();
        if (_fault is { } fault) System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(fault);
        return _done;
    }

    private void Work(CancellationToken stop, CancellationToken stopNow)
    {
        try
        {
            while (!stop.IsCancellationRequested && Volatile.Read(ref _fault) is null && Take() is var (shard, item))
            {
                var start = Stopwatch.GetTimestamp();
                var rows = _season.Grow(item, stopNow);
                Finish(shard, rows, Stopwatch.GetElapsedTime(start).TotalSeconds);
            }
        }
        catch (OperationCanceledException)
        {
            // Given up in the middle: the item is still to be grown.
        }
        catch (Exception error)
        {
            Interlocked.CompareExchange(ref _fault, error, null);
        }
    }

    private (OpenShard Shard, int Item)? Take()
    {
        lock (_lock)
        {
            while (true)
            {
                foreach (var open in _open)
                    if (open.TryTake(out var item)) return (open, item);
                if (_nextShard >= _options.Shards.Count) return null;
                Open(_options.Shards[_nextShard++]);
            }
        }
    }

    private void Open(int shard)
    {
        var found = _folder.Find(shard);
        var (first, last) = _items.ShardItems(shard);
        if (found.State == ShardState.Complete && !(_options.RetryFailed && found.Manifest!.Failed > 0))
        {
            _done = _done with { Kept = _done.Kept + last - first + 1, Failed = _done.Failed + found.Manifest!.Failed };
            _progress(_done);
            return;
        }

        if (found.State is ShardState.Stale or ShardState.Damaged) _say($"shard {shard} is grown again: {found.Reason}");
        // Of a shard that is complete but for failures only those are tried again.
        var (kept, seconds) = found.State == ShardState.Complete ? _folder.Grown(found.Manifest!) : Partial();
        var open = new OpenShard(shard, first, last, kept, seconds);
        _done = _done with { Kept = _done.Kept + kept.Count, Failed = _done.Failed + kept.Count(rows => rows.Failure is not null) };
        if (open.Left == 0) _folder.Publish(shard, open.Rows(), open.Seconds);
        else _open.Add(open);

        (IReadOnlyList<ItemRows> Rows, double Seconds) Partial()
        {
            var rows = _folder.FindPartial(shard, out var spent);
            return ([.. rows.Where(item => !(_options.RetryFailed && item.Failure is not null))], spent);
        }
    }

    private void Finish(OpenShard shard, ItemRows rows, double seconds)
    {
        bool isLast;
        lock (_lock)
        {
            shard.Add(rows, seconds);
            isLast = shard.Left == 0;
            if (isLast) _open.Remove(shard);
            _done = _done with { Grown = _done.Grown + 1, Failed = _done.Failed + (rows.Failure is null ? 0 : 1) };
            _progress(_done);
            if (!isLast && shard.SinceSaved > _options.Checkpoint) Save(shard);
        }

        if (isLast) _folder.Publish(shard.Number, shard.Rows(), shard.Seconds);
    }

    private void PublishOpen()
    {
        try
        {
            foreach (var shard in _open.Where(shard => shard.HasUnsaved)) Save(shard);
        }
        catch (TryAgainException error)
        {
            _fault ??= error;
        }
    }

    private void Save(OpenShard shard) =>
        shard.Saved(_folder.PublishPartial(shard.Number, shard.Rows(), shard.Seconds, shard.PartialName));

    private static int Size((int First, int Last) items) => items.Last - items.First + 1;
}
