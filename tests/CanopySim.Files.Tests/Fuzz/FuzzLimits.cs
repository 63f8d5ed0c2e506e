namespace CanopySim.Files.Tests.Fuzz;

/// <summary>What reading a damaged file may cost.</summary>
internal static class FuzzLimits
{
    /// <summary>After this a file counts as one that hangs. The slowest of a million takes far less; a busy machine may stall a while.</summary>
    public static readonly TimeSpan LongestRead = TimeSpan.FromSeconds(10);

    private const long BytesForAny = 4_000_000;

    private const long BytesPerByte = 200;

    /// <summary>Bytes that may be allocated in all, freed ones too, while a file of a size is read.</summary>
    public static long Bytes(int size) => BytesForAny + (BytesPerByte * size);
}
