namespace CanopySim.Files.Charts;

/// <summary>
/// What a chart is drawn on: warm paper, or the near black of a dark screen. Colors of data stay; those of paper, text
/// and lines turn.
/// </summary>
public sealed class ChartSurface
{
    private static readonly Dictionary<uint, uint> OnNight = new()
    {
        [ChartStyle.Paper] = ChartStyle.Night,
        [ChartStyle.Text] = ChartStyle.TextOnNight,
        [ChartStyle.QuietText] = ChartStyle.QuietTextOnNight,
        [ChartStyle.Grid] = 0x2B2E31,
        [ChartStyle.StageLine] = 0x777B73,
        [ChartStyle.Line] = ChartStyle.AccentOnNight,
        [ChartStyle.FaintLine] = 0x4E5660,
    };

    private readonly IReadOnlyDictionary<uint, uint> _colors;

    private ChartSurface(IReadOnlyDictionary<uint, uint> colors) => _colors = colors;

    public static ChartSurface Day { get; } = new(new Dictionary<uint, uint>());

    public static ChartSurface Dark { get; } = new(OnNight);

    /// <summary>The color that stands for one of <see cref="ChartStyle"/> on this surface, 0xRRGGBB.</summary>
    public uint Of(uint rgb) => _colors.TryGetValue(rgb, out var own) ? own : rgb;
}

/// <summary>Where a panel of a drawn chart lies, so that a pointer over it can be read.</summary>
/// <param name="Left">Left edge of its data [px].</param>
/// <param name="Top">Upper edge [px].</param>
/// <param name="Right">Right edge [px].</param>
/// <param name="Bottom">Lower edge [px].</param>
/// <param name="FromX">Value at the left edge.</param>
/// <param name="ToX">Value at the right edge.</param>
public readonly record struct ChartField(float Left, float Top, float Right, float Bottom, double FromX, double ToX)
{
    /// <summary>Place of a value [px].</summary>
    public float PixelOf(double x) => (float)(Left + ((x - FromX) / (ToX - FromX) * (Right - Left)));

    /// <summary>Value at a place [px].</summary>
    public double ValueAt(float x) => FromX + ((x - Left) / (Right - Left) * (ToX - FromX));
}
