using System.Text;

namespace CanopySim.Files.Recording;

/// <summary>
/// Writes blocks into a file, little-endian: eight letters and the version; the blocks; then the index, for each block its kind, place, packed length, raw length and check;
/// last the index' place, the number of its entries, the check of its bytes, and the eight letters again.
/// </summary>
public sealed class FileBlockWriter : IBlockTarget, IDisposable
{
    private readonly BinaryWriter _writer;
    private readonly List<BlockEntry> _entries = [];

    public FileBlockWriter(string path)
    {
        _writer = new BinaryWriter(File.Create(path), Encoding.UTF8);
        _writer.Write(FileBlocks.Letters);
        _writer.Write(FileBlocks.Version);
    }

    public void Add(BlockKind kind, ReadOnlySpan<byte> raw)
    {
        var packed = BlockPacking.Pack(raw);
        _entries.Add(new BlockEntry(kind, _writer.BaseStream.Position, packed.Length, raw.Length, BlockPacking.CheckOf(raw)));
        _writer.Write(packed);
    }

    /// <summary>Writes the index; without it the file is no recording.</summary>
    public void Finish()
    {
        var place = _writer.BaseStream.Position;
        var index = BlockEntry.Bytes(_entries);
        _writer.Write(index);
        _writer.Write(place);
        _writer.Write(_entries.Count);
        _writer.Write(BlockPacking.CheckOf(index));
        _writer.Write(FileBlocks.Letters);
        _writer.Flush();
    }

    public void Dispose() => _writer.Dispose();
}

/// <summary>Where a block lies in the file.</summary>
internal readonly record struct BlockEntry(BlockKind Kind, long Place, int PackedLength, int RawLength, ulong Check)
{
    public const int Length = 1 + 8 + 4 + 4 + 8;

    public static byte[] Bytes(IReadOnlyList<BlockEntry> entries)
    {
        using var bytes = new MemoryStream();
        using var writer = new BinaryWriter(bytes);
        foreach (var entry in entries)
        {
            writer.Write((byte)entry.Kind);
            writer.Write(entry.Place);
            writer.Write(entry.PackedLength);
            writer.Write(entry.RawLength);
            writer.Write(entry.Check);
        }

        return bytes.ToArray();
    }

    public static BlockEntry Read(BinaryReader reader) => new(
        (BlockKind)reader.ReadByte(), reader.ReadInt64(), reader.ReadInt32(), reader.ReadInt32(), reader.ReadUInt64());
}
