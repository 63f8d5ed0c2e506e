namespace CanopySim.Files.Tests.Fuzz;

/// <summary>What reading a damaged file may cost.</summary>
internal static class FuzzLimits
{
    /// <summary>After this a file counts as one that hangs. The slowest of a million takes far less; a busy machine may stall a while.</summary>
    public static readonly TimeSpan LongestRead = TimeSpan.FromSeconds(10);

    // Measured over 30,000 files: 1.3 MB for a scenario of seven lines over one with every key, and 110 a byte for large ones.
    private const long BytesForAny = 2_000_000;

    public const long BytesPerByte = 150;

    /// <summary>Bytes that may be allocated in all, freed ones too, while a file of a size is read.</summary>
    public static long Bytes(FuzzFormat format, int size) => BytesForAny + format.BytesBeside + (format.BytesPerByte * size);
}
