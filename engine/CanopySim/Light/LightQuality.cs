namespace CanopySim.Light;

/// <summary>
/// How finely light is sampled. The errors beside the levels are per-leaf errors of a day's PAR (root mean square over leaves,
/// overcast sky), measured in LightErrorTests against 1,024 directions at 6 mm.
/// </summary>
public readonly record struct LightQuality
{
    /// <summary>Directions of equal solid angle that stand for the sky and carry scattered light.</summary>
    public required int SkyDirectionCount { get; init; }

    /// <summary>Edge of a pixel square to each of those directions [m].</summary>
    public required double SkyPixel { get; init; }

    /// <summary>Edge of a pixel square to the sun [m].</summary>
    public required double SunPixel { get; init; }

    /// <summary>Scattering stops when a sweep changes less power than this share of what came in.</summary>
    public required double SolverTolerance { get; init; }

    public static LightQuality Draft { get; } =
        new() { SkyDirectionCount = 48, SkyPixel = 0.016, SunPixel = 0.016, SolverTolerance = 1e-5 };

    public static LightQuality Standard { get; } =
        new() { SkyDirectionCount = 145, SkyPixel = 0.012, SunPixel = 0.008, SolverTolerance = 1e-5 };

    public static LightQuality Fine { get; } =
        new() { SkyDirectionCount = 290, SkyPixel = 0.008, SunPixel = 0.004, SolverTolerance = 1e-5 };

    public static LightQuality For(Quality quality) => quality switch
    {
        Quality.Draft => Draft,
        Quality.Standard => Standard,
        Quality.Fine => Fine,
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "unknown quality"),
    };
}
