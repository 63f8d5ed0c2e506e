using CanopySim.Files.Charts;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// Colors of the screen's surfaces and text, 0xRRGGBB, those of the charts; text on any of its surfaces at 4.5 : 1 or
/// more.
/// </summary>
/// <param name="Surface">What panels and bars are made of.</param>
/// <param name="Raised">Buttons and fields that can be acted on.</param>
/// <param name="Pressed">The same under the pointer.</param>
/// <param name="Text">Text.</param>
/// <param name="Quiet">Units, notes and numbers at the lines.</param>
/// <param name="Accent">What can be acted on or is chosen.</param>
/// <param name="OnAccent">Text on the accent.</param>
/// <param name="Line">Thin lines, stages.</param>
/// <param name="Seam">Between surfaces.</param>
/// <param name="Silhouette">Leaf area and light behind the lines of season and day.</param>
public sealed record ScreenPalette(
    uint Surface, uint Raised, uint Pressed, uint Text, uint Quiet, uint Accent, uint OnAccent, uint Line, uint Seam,
        uint Silhouette)
{
    public static ScreenPalette Light { get; } = new(
        ChartStyle.Paper, 0xEFECE4, 0xE4E0D6, ChartStyle.Text, ChartStyle.QuietText, ChartStyle.Accent,
            ChartStyle.Paper,
        ChartStyle.StageLine, 0xDAD6CB, 0xC6D1C0);

    public static ScreenPalette Dark { get; } = new(
        ChartStyle.Night, 0x23272A, 0x2F3438, ChartStyle.TextOnNight, ChartStyle.QuietTextOnNight,
            ChartStyle.AccentOnNight,
        ChartStyle.Night, 0x777B73, 0x33383C, 0x45554B);

    public static ScreenPalette Of(ScreenTheme theme) => theme == ScreenTheme.Dark ? Dark : Light;

    /// <summary>
    /// Contrast of two colors, 1 to 21: the ratio of relative luminances of the Web Content Accessibility Guidelines
    /// 2.1.
    /// </summary>
    public static double Contrast(uint one, uint other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(uint rgb) =>
        (0.2126 * Linear((rgb >> 16) & 0xFF)) + (0.7152 * Linear((rgb >> 8) & 0xFF)) + (0.0722 * Linear(rgb & 0xFF));

    private static double Linear(uint channel)
    {
        var share = channel / 255.0;
        return share <= 0.03928 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }
}
