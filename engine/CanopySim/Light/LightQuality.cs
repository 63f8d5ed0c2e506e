namespace CanopySim.Light;

/// <summary>
/// How finely light is sampled. Beside each level stands the root mean square error over leaves of a day's PAR, relative to the mean
/// leaf, against 1,200 directions at 6 mm and suns at 2 mm on the canopy as drawn (first-season on 20 July; clear day, overcast
/// day), and the error in one clear hour (hedge of 1,200 leaves).
/// </summary>
public readonly record struct LightQuality
{
    /// <summary>Directions of equal solid angle that stand for the sky and carry scattered light.</summary>
    public required int SkyDirectionCount { get; init; }

    /// <summary>Edge of a pixel square to each of those directions [m].</summary>
    public required double SkyPixel { get; init; }

    /// <summary>Edge of a pixel square to the sun [m].</summary>
    public required double SunPixel { get; init; }

    /// <summary>A sun nearer than this to one that the geometry has drawn casts its shadows [°]; 0: each casts its own.</summary>
    public double SunAngle { get; init; }

    /// <summary>Leaf area that may grow or fall before the geometry is made anew, as a share.</summary>
    public double AreaDrift { get; init; }

    /// <summary>
    /// Leaf area index [1] below which that is a share of this one's leaf area: young canopies double in days, shade each other little and catch
    /// little light.
    /// </summary>
    public double LeastLeafAreaIndex { get; init; }

    /// <summary>True where hours are put together from a uniform sky and suns that are solved once a geometry.</summary>
    public bool IsComposed { get; init; }

    /// <summary>Scattering stops when a sweep changes less power than this share of what came in.</summary>
    public required double SolverTolerance { get; init; }

    /// <summary>
    /// For members of an ensemble: less than half of a draft's work. 11 % clear, 18 % overcast; canopy within 1.2 %. Four
    /// seasons of the notebook's block made 0.2 to 0.5 % more carbon than at draft and up to 0.5 % more leaf, one of a piece of first-season
    /// 1.7 % more carbon; all were ripe on the same day or the next. Gas exchange is solved every second hour.
    /// </summary>
    public static LightQuality Rough { get; } =
        new()
        {
            SkyDirectionCount = 24,
            SkyPixel = 0.035,
            SunPixel = 0.03,
            SunAngle = 6,
            AreaDrift = 0.15,
            LeastLeafAreaIndex = 0.3,
            IsComposed = true,
            SolverTolerance = 5e-3,
        };

    /// <summary>
    /// 4.4 % clear, 5.7 % overcast; 13 % of a leaf's PAR in one clear hour. Canopy within 0.5 %. Blades of twelve triangles, stalks as
    /// strips. On first-season suns 1.5° apart that share their shadows change a season's carbon by 0.03 %, the tolerance by 0.01 %, the
    /// renewal of geometries beside a standard's by 0.3 %; all in all it is 0.5 % over fine's.
    /// </summary>
    public static LightQuality Draft { get; } =
        new()
        {
            SkyDirectionCount = 54,
            SkyPixel = 0.02,
            SunPixel = 0.016,
            SunAngle = 1.5,
            AreaDrift = 0.06,
            LeastLeafAreaIndex = 0.5,
            SolverTolerance = 1e-3,
        };

    /// <summary>
    /// 1.8 % clear, 1.8 % overcast; 4.5 % in one clear hour. Canopy within 0.1 %. 2 % of drift changes a season's carbon by 0.04 %
    /// (first-season).
    /// </summary>
    public static LightQuality Standard { get; } =
        new() { SkyDirectionCount = 280, SkyPixel = 0.016, SunPixel = 0.008, AreaDrift = 0.02, SolverTolerance = 3e-5 };

    /// <summary>0.7 % clear, 1.2 % overcast; 1.7 % in one clear hour.</summary>
    public static LightQuality Fine { get; } =
        new() { SkyDirectionCount = 290, SkyPixel = 0.008, SunPixel = 0.004, SolverTolerance = 1e-5 };

    /// <exception cref="ArgumentException">A length or the tolerance is not positive, or an angle or a drift negative.</exception>
    internal void Check()
    {
        if (!(SkyPixel > 0 && SunPixel > 0 && SolverTolerance > 0 && SunAngle >= 0 && AreaDrift >= 0 && LeastLeafAreaIndex >= 0) || !double.IsFinite(SkyPixel + SunPixel))
            throw new ArgumentException($"light cannot be sampled so: {this}");
    }

    public static LightQuality For(Quality quality) => quality switch
    {
        Quality.Rough => Rough,
        Quality.Draft => Draft,
        Quality.Standard => Standard,
        Quality.Fine => Fine,
        _ => throw new ArgumentOutOfRangeException(nameof(quality), quality, "unknown quality"),
    };
}
