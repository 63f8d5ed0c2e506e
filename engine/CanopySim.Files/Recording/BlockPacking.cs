using System.IO.Compression;
using System.Security.Cryptography;

namespace CanopySim.Files.Recording;

/// <summary>Packs a block with deflate, and its check with it: the first eight bytes of its SHA-256.</summary>
internal static class BlockPacking
{
    public const int CheckLength = 8;

    /// <summary>The largest block that is believed [bytes]: a day of a hundred thousand leaves.</summary>
    public const int Largest = 1 << 28;

    public static byte[] Pack(ReadOnlySpan<byte> raw)
    {
        using var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.Fastest, leaveOpen: true)) deflate.Write(raw);
        return packed.ToArray();
    }

    public static ulong CheckOf(ReadOnlySpan<byte> raw)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(raw, hash);
        return BitConverter.ToUInt64(hash[..CheckLength]);
    }

    /// <exception cref="InvalidDataException">What comes out is not what went in.</exception>
    public static byte[] Unpack(byte[] packed, int rawLength, ulong check)
    {
        var raw = new byte[rawLength];
        using var deflate = new DeflateStream(new MemoryStream(packed, writable: false), CompressionMode.Decompress);
        deflate.ReadExactly(raw);
        if (deflate.ReadByte() >= 0) throw new InvalidDataException("a block is longer than it says");
        return CheckOf(raw) == check ? raw : throw new InvalidDataException("a block does not match its check");
    }
}
