namespace CanopySim.Light;

/// <summary>
/// One worker's links, kept by the smaller node of each pair in chains of small chunks: writing is a step forward in an open
/// chunk, and counting, row by row, stays in a cache that random increments of a matrix would miss.
/// </summary>
internal sealed class LinkCounter(int rows)
{
    private const int ChunkSize = 32;

    // Where the next partner of a row goes; at a multiple of the chunk size the chunk is full. 0: no chunk yet.
    private readonly int[] _cursors = new int[rows];
    private uint[] _pool = new uint[ChunkSize << 12];
    private int _used = ChunkSize;

    /// <summary>Numbers held, links and chains.</summary>
    public int Held => _used;

    public void Add(int a, int b)
    {
        var (row, partner) = a < b ? (a, b) : (b, a);
        var cursor = _cursors[row];
        if (((uint)cursor % ChunkSize) == 0) cursor = Open(cursor);
        _pool[cursor] = (uint)partner;
        _cursors[row] = cursor + 1;
    }

    /// <summary>Adds a row's links to a histogram over partners, and marks which partners it has.</summary>
    public void Count(int row, uint[] histogram, ulong[] marks)
    {
        var end = _cursors[row];
        while (end > 0)
        {
            var chunk = (end - 1) / ChunkSize * ChunkSize;
            foreach (var partner in _pool.AsSpan(chunk + 1, end - chunk - 1))
            {
                histogram[partner]++;
                marks[partner >> 6] |= 1UL << (int)partner;
            }

            end = (int)_pool[chunk];
        }
    }

    public void Clear()
    {
        Array.Clear(_cursors);
        _used = ChunkSize;
    }

    // A chunk's first number is the end of the chunk before it.
    private int Open(int previousEnd)
    {
        var chunk = _used;
        _used += ChunkSize;
        if (_used > _pool.Length) Array.Resize(ref _pool, checked(2 * _pool.Length));
        _pool[chunk] = (uint)previousEnd;
        return chunk + 1;
    }
}
