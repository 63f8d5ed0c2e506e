using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace CanopySim.Light;

/// <summary>
/// One worker's links of faces to others, kept by the smaller node of each pair in chains of small chunks: writing is a step forward in an open
/// chunk, and counting, row by row, stays in a cache that random increments of a matrix would miss.
/// </summary>
internal sealed class LinkCounter
{
    /// <summary>Partners to a mark.</summary>
    public const int MarkWidth = 16;

    private const int ChunkSize = 128;

    // Where the next partner of a row goes; at a multiple of the chunk size the chunk is full. 0: no chunk yet.
    private int[] _cursors = [];

    // Few strips: links to the ground are counted at once.
    private int[] _ground = [];

    private uint[] _pool = new uint[ChunkSize << 10];
    private int _used = ChunkSize;
    private int _firstGround;
    private int _groundStrips;

    /// <summary>Forgets all links and makes room for those of other nodes.</summary>
    public void Begin(LightNodes nodes)
    {
        (_firstGround, _groundStrips, _used) = (nodes.FirstGround, nodes.GroundStrips, ChunkSize);
        if (_cursors.Length < _firstGround) _cursors = new int[_firstGround];
        if (_ground.Length < _firstGround * _groundStrips) _ground = new int[_firstGround * _groundStrips];
        _cursors.AsSpan(0, _firstGround).Clear();
        _ground.AsSpan(0, _firstGround * _groundStrips).Clear();
    }

    public void Add(int a, int b)
    {
        // Which of the two is smaller is a coin toss to the processor: a sign mask instead of a branch.
        var difference = a - b;
        var excess = difference & (difference >> 31);
        ref var cursor = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_cursors), b + excess);
        if (((uint)cursor % ChunkSize) == 0) cursor = Open(cursor);
        Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_pool), cursor++) = (uint)(a - excess);
    }

    public void AddGround(int face, int strip) => _ground[(face * _groundStrips) + strip]++;

    /// <summary>Adds a row's links to a histogram over partners, and marks where in it they are.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Count(int row, uint[] histogram, byte[] marks)
    {
        for (var strip = 0; strip < _groundStrips; strip++)
        {
            var count = _ground[(row * _groundStrips) + strip];
            if (count == 0) continue;
            histogram[_firstGround + strip] += (uint)count;
            marks[(_firstGround + strip) / MarkWidth] = 1;
        }

        var end = _cursors[row];
        while (end > 0)
        {
            var chunk = (end - 1) / ChunkSize * ChunkSize;
            foreach (var partner in _pool.AsSpan(chunk + 1, end - chunk - 1))
            {
                histogram[partner]++;
                marks[partner / MarkWidth] = 1;
            }

            end = (int)_pool[chunk];
        }
    }

    // A chunk's first number is the end of the chunk before it.
    private int Open(int previousEnd)
    {
        var chunk = _used;
        _used += ChunkSize;
        if (_used > _pool.Length) Grow();
        _pool[chunk] = (uint)previousEnd;
        return chunk + 1;
    }

    private void Grow()
    {
        Array.Resize(ref _pool, checked(2 * _pool.Length));
    }
}
