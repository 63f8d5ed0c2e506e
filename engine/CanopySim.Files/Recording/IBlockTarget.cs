namespace CanopySim.Files.Recording;

/// <summary>Takes the blocks of a recording, each kind in its order.</summary>
public interface IBlockTarget
{
    void Add(BlockKind kind, ReadOnlySpan<byte> raw);
}
