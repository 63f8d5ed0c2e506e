namespace CanopySim.Photosynthesis;

/// <summary>Memory of one thread for <see cref="LeafBatch"/>.</summary>
public sealed class LeafBatchScratch
{
    private int[] _all = [];

    internal LeafBlock Block { get; } = new();

    /// <summary>Leaves for the second tier.</summary>
    internal LeafNumbers Again { get; } = new();

    /// <summary>Settled leaves that may have a cooler rest temperature.</summary>
    internal LeafNumbers Warm { get; } = new();

    /// <summary>Leaves for the solver in double.</summary>
    internal LeafNumbers Left { get; } = new();

    internal void Begin(int leaves)
    {
        if (_all.Length < leaves)
        {
            _all = new int[leaves];
            for (var i = 0; i < leaves; i++) _all[i] = i;
        }

        Again.Clear(leaves);
        Warm.Clear(leaves);
        Left.Clear(leaves);
    }

    internal ReadOnlySpan<int> All(int leaves) => _all.AsSpan(0, leaves);
}

/// <summary>Numbers of leaves, in a store that is filled again and again.</summary>
internal sealed class LeafNumbers
{
    private int[] _numbers = [];

    public int Count { get; private set; }

    public ReadOnlySpan<int> Numbers => _numbers.AsSpan(0, Count);

    public void Clear(int atMost)
    {
        Count = 0;
        if (_numbers.Length < atMost) _numbers = new int[atMost];
    }

    public void Add(int number) => _numbers[Count++] = number;
}
