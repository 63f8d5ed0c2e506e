using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace CanopySim.Light;

/// <summary>
/// One worker's links of faces to others, kept by the smaller node of each pair in chains of small chunks: writing is a step forward in an open
/// chunk, and counting, row by row, stays in a cache that random increments of a matrix would miss.
/// </summary>
internal sealed class LinkCounter(LightNodes nodes) : IDisposable
{
    /// <summary>Partners to a mark.</summary>
    public const int MarkWidth = 16;

    private const int ChunkSize = 128;

    // Where the next partner of a row goes; at a multiple of the chunk size the chunk is full. 0: no chunk yet.
    private readonly int[] _cursors = new int[nodes.FirstGround];

    // Few strips: links to the ground are counted at once.
    private readonly int[] _ground = new int[nodes.FirstGround * nodes.GroundStrips];

    // Rented: a season builds hundreds of tables, and fresh megabytes each time cost more than the counting.
    private uint[] _pool = ArrayPool<uint>.Shared.Rent(ChunkSize << 13);
    private int _used = ChunkSize;

    /// <summary>Numbers held, links and chains.</summary>
    public int Held => _used;

    public void Add(int a, int b)
    {
        // Which of the two is smaller is a coin toss to the processor: a sign mask instead of a branch.
        var difference = a - b;
        var excess = difference & (difference >> 31);
        ref var cursor = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_cursors), b + excess);
        if (((uint)cursor % ChunkSize) == 0) cursor = Open(cursor);
        Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_pool), cursor++) = (uint)(a - excess);
    }

    public void AddGround(int face, int strip) => _ground[(face * nodes.GroundStrips) + strip]++;

    /// <summary>Adds a row's links to a histogram over partners, and marks where in it they are.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Count(int row, uint[] histogram, byte[] marks)
    {
        for (var strip = 0; strip < nodes.GroundStrips; strip++)
        {
            var count = _ground[(row * nodes.GroundStrips) + strip];
            if (count == 0) continue;
            histogram[nodes.FirstGround + strip] += (uint)count;
            marks[(nodes.FirstGround + strip) / MarkWidth] = 1;
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

    public void Clear()
    {
        Array.Clear(_cursors);
        Array.Clear(_ground);
        _used = ChunkSize;
    }

    public void Dispose()
    {
        ArrayPool<uint>.Shared.Return(_pool);
        _pool = [];
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
        var larger = ArrayPool<uint>.Shared.Rent(checked(2 * _pool.Length));
        _pool.CopyTo(larger, 0);
        ArrayPool<uint>.Shared.Return(_pool);
        _pool = larger;
    }
}
