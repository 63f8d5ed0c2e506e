namespace CanopySim.Files.Recording;

/// <summary>What a block of a recording holds; the numbers stand in the file.</summary>
public enum BlockKind : byte
{
    /// <summary>What the season is: scenario, quality, hashes.</summary>
    Head = 1,

    /// <summary>Weather of the season, by hour.</summary>
    Weather = 2,

    /// <summary>A canopy as it was placed.</summary>
    Canopy = 3,

    /// <summary>A day and what its leaves did in it.</summary>
    Day = 4,

    /// <summary>The hours of a day.</summary>
    Hours = 5,

    /// <summary>What the season gave in the end.</summary>
    Outcome = 6,
}

/// <summary>Blocks by kind and number, from a file or from a season that is still being computed. Any thread may ask.</summary>
public interface IRecordingBlocks : IDisposable
{
    int Count(BlockKind kind);

    /// <summary>What a block holds, unpacked and checked.</summary>
    /// <exception cref="InputError">It is damaged.</exception>
    byte[] Read(BlockKind kind, int number);
}
