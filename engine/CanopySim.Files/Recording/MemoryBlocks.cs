namespace CanopySim.Files.Recording;

/// <summary>Blocks of a season that is being computed, packed as in a file: a season of a large canopy would not fit otherwise.</summary>
public sealed class MemoryBlocks : IRecordingBlocks, IBlockTarget
{
    private readonly Lock _lock = new();
    private readonly Dictionary<BlockKind, List<(byte[] Packed, int RawLength, ulong Check)>> _blocks = [];

    public void Add(BlockKind kind, ReadOnlySpan<byte> raw)
    {
        var block = (BlockPacking.Pack(raw), raw.Length, BlockPacking.CheckOf(raw));
        lock (_lock)
        {
            if (!_blocks.TryGetValue(kind, out var blocks)) _blocks[kind] = blocks = [];
            blocks.Add(block);
        }
    }

    public int Count(BlockKind kind)
    {
        lock (_lock) return _blocks.TryGetValue(kind, out var blocks) ? blocks.Count : 0;
    }

    public byte[] Read(BlockKind kind, int number)
    {
        (byte[] Packed, int RawLength, ulong Check) block;
        lock (_lock) block = _blocks[kind][number];
        return BlockPacking.Unpack(block.Packed, block.RawLength, block.Check);
    }

    public void Dispose()
    {
    }
}
