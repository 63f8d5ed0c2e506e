namespace CanopySim.Files.Charts;

/// <summary>A finished chart.</summary>
/// <param name="Stem">Its file's name without ending.</param>
/// <param name="Title">What is drawn.</param>
/// <param name="Caption">One line that says what to see; the text alternative too.</param>
/// <param name="Png">The wide chart, at twice its size in pixels.</param>
/// <param name="Svg">The wide chart as SVG.</param>
/// <param name="NarrowSvg">The same for a phone: fewer pixels, text as large.</param>
public sealed record ChartPicture(string Stem, string Title, string Caption, byte[] Png, string Svg, string NarrowSvg);

/// <summary>Width and height of a chart [px].</summary>
public readonly record struct ChartSize(int Width, int Height)
{
    public static ChartSize Wide { get; } = new(720, 380);

    public static ChartSize Narrow { get; } = new(340, 380);

    public bool IsNarrow => Width < 500;
}
