using System.Diagnostics;

namespace CanopySim.Files.Batch;

/// <summary>A shard whose items are being grown. Who calls it holds a lock.</summary>
internal sealed class OpenShard
{
    private readonly ItemRows?[] _rows;
    private readonly int _first;
    private int _next;
    private long _saved = Stopwatch.GetTimestamp();

    public OpenShard(int number, int first, int last, IReadOnlyList<ItemRows> kept, double seconds)
    {
        (Number, _first, Seconds) = (number, first, seconds);
        _rows = new ItemRows?[last - first + 1];
        foreach (var rows in kept) _rows[rows.Item - first] = rows;
        Left = _rows.Count(rows => rows is null);
    }

    public int Number { get; }

    /// <summary>Items that are still to be finished.</summary>
    public int Left { get; private set; }

    /// <summary>Time that cores spent on its items.</summary>
    public double Seconds { get; private set; }

    /// <summary>True where something was finished that is not on the disk.</summary>
    public bool HasUnsaved { get; private set; }

    /// <summary>Name of the part that this process wrote last.</summary>
    public string? PartialName { get; private set; }

    public TimeSpan SinceSaved => Stopwatch.GetElapsedTime(_saved);

    /// <summary>The next item that nobody has begun.</summary>
    public bool TryTake(out int item)
    {
        while (_next < _rows.Length && _rows[_next] is not null) _next++;
        item = _first + _next;
        return _next++ < _rows.Length;
    }

    public void Add(ItemRows rows, double seconds)
    {
        _rows[rows.Item - _first] = rows;
        Left--;
        Seconds += seconds;
        HasUnsaved = true;
    }

    public void Saved(string name)
    {
        PartialName = name;
        HasUnsaved = false;
        _saved = Stopwatch.GetTimestamp();
    }

    /// <summary>What is finished, by number.</summary>
    public IReadOnlyList<ItemRows> Rows() => [.. _rows.OfType<ItemRows>()];
}
