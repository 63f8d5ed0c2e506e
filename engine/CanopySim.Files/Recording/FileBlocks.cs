using System.Text;

namespace CanopySim.Files.Recording;

/// <summary>Blocks of a recording in a file, read when they are asked for.</summary>
public sealed class FileBlocks : IRecordingBlocks
{
    /// <summary>Changes whenever an earlier program could not read the file, or would misread it.</summary>
    public const int Version = 1;

    private const int HeadLength = 8 + 4;
    private const int TailLength = 8 + 4 + 8 + 8;
    private const int MostBlocks = 100_000;

    private readonly Lock _lock = new();
    private readonly string _path;
    private readonly FileStream _file;
    private readonly Dictionary<BlockKind, List<BlockEntry>> _entries = [];

    private FileBlocks(string path, FileStream file) => (_path, _file) = (path, file);

    internal static byte[] Letters { get; } = Encoding.ASCII.GetBytes("vineyear");

    /// <exception cref="InputError">The file cannot be read, is no recording, or is a damaged one.</exception>
    public static FileBlocks Open(string path)
    {
        FileStream file;
        try
        {
            file = File.OpenRead(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new InputError(new InputPlace(path), $"it cannot be read ({error.Message})", "a recording that season --record wrote");
        }

        var blocks = new FileBlocks(path, file);
        try
        {
            blocks.ReadIndex();
        }
        catch (Exception error)
        {
            file.Dispose();
            if (error is InputError) throw;
            if (error is IOException or InvalidDataException) throw Damaged(path, error.Message);
            throw;
        }

        return blocks;
    }

    public int Count(BlockKind kind) => _entries.TryGetValue(kind, out var entries) ? entries.Count : 0;

    public byte[] Read(BlockKind kind, int number)
    {
        var entry = _entries[kind][number];
        var packed = new byte[entry.PackedLength];
        try
        {
            lock (_lock)
            {
                _file.Position = entry.Place;
                _file.ReadExactly(packed);
            }

            return BlockPacking.Unpack(packed, entry.RawLength, entry.Check);
        }
        catch (Exception error) when (error is IOException or InvalidDataException)
        {
            throw Damaged(_path, error.Message);
        }
    }

    public void Dispose() => _file.Dispose();

    internal static InputError Damaged(string path, string how) => new(
        new InputPlace(path), $"the recording is damaged ({how})", "one that is whole: run canopysim season --record again");

    private void ReadIndex()
    {
        using var reader = new BinaryReader(_file, Encoding.UTF8, leaveOpen: true);
        if (_file.Length < HeadLength || !reader.ReadBytes(Letters.Length).AsSpan().SequenceEqual(Letters))
            throw new InputError(new InputPlace(_path), "it is no recording of a season", "a season.bin that canopysim season --record wrote");
        var version = reader.ReadInt32();
        if (version != Version)
            throw new InputError(
                new InputPlace(_path), $"a recording of version {version}", $"version {Version}: run canopysim season --record again with this program");
        if (_file.Length < HeadLength + TailLength) throw new InvalidDataException("it ends too early");
        _file.Position = _file.Length - TailLength;
        var (place, count, check) = (reader.ReadInt64(), reader.ReadInt32(), reader.ReadUInt64());
        if (!reader.ReadBytes(Letters.Length).AsSpan().SequenceEqual(Letters)) throw new InvalidDataException("its end is missing");
        if (count is < 0 or > MostBlocks || place < HeadLength || place + ((long)count * BlockEntry.Length) != _file.Length - TailLength)
            throw new InvalidDataException("its index is not where it should be");
        _file.Position = place;
        var index = reader.ReadBytes(count * BlockEntry.Length);
        if (BlockPacking.CheckOf(index) != check) throw new InvalidDataException("its index does not match its check");
        using var entries = new BinaryReader(new MemoryStream(index));
        for (var i = 0; i < count; i++)
        {
            var entry = BlockEntry.Read(entries);
            if (entry.PackedLength < 0 || entry.RawLength is < 0 or > BlockPacking.Largest || entry.Place < HeadLength || entry.Place + entry.PackedLength > place)
                throw new InvalidDataException("its index points outside the file");
            if (!_entries.TryGetValue(entry.Kind, out var list)) _entries[entry.Kind] = list = [];
            list.Add(entry);
        }
    }
}
