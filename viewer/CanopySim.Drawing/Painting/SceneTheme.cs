using CanopySim.Files.Charts;

namespace CanopySim.Drawing.Painting;

/// <summary>Colors of what is no data. Colors are 0xRRGGBB.</summary>
/// <param name="Surface">Behind everything; the ground fades into it.</param>
/// <param name="Text">Text on the surface.</param>
/// <param name="QuietText">Units and captions.</param>
/// <param name="Accent">The chosen leaf, and what can be acted on.</param>
/// <param name="Earth">Bare soil under the row.</param>
/// <param name="Alley">Ground between the rows.</param>
/// <param name="Wood">Trunks and cordons.</param>
/// <param name="GreenShoot">Shoots and petioles of spring.</param>
/// <param name="RipeShoot">Shoots that have turned to wood.</param>
/// <param name="GreenFruit">Clusters before veraison.</param>
/// <param name="RipeFruit">Clusters after.</param>
/// <param name="Post">Posts and arms.</param>
/// <param name="Wire">Wires.</param>
/// <param name="Sun">The sun's disc.</param>
/// <param name="SunPath">Its way through the day, and the north arrow.</param>
public sealed record SceneTheme(
    uint Surface, uint Text, uint QuietText, uint Accent, uint Earth, uint Alley, uint Wood, uint GreenShoot,
        uint RipeShoot,
    uint GreenFruit, uint RipeFruit, uint Post, uint Wire, uint Sun, uint SunPath)
{
    /// <summary>On warm paper.</summary>
    public static SceneTheme Light { get; } = new(
        ChartStyle.Paper, ChartStyle.Text, ChartStyle.QuietText, ChartStyle.Accent, Earth: 0xC2AE93, Alley: 0xCDC2A6,
            Wood: 0x75604C,
        GreenShoot: 0x8C9160, RipeShoot: 0x94714E, GreenFruit: 0x9BA774, RipeFruit: 0x7C2F5C, Post: 0x9A9082,
            Wire: 0x6E6E6A, Sun: 0xF2B632,
        SunPath: 0x8A7B5C);

    /// <summary>On near black.</summary>
    public static SceneTheme Dark { get; } = new(
        ChartStyle.Night, ChartStyle.TextOnNight, ChartStyle.QuietTextOnNight, ChartStyle.AccentOnNight,
            Earth: 0x4F4437, Alley: 0x4A4A3C,
        Wood: 0x7A6552, GreenShoot: 0x83885A, RipeShoot: 0x8F6D4B, GreenFruit: 0x93A06C, RipeFruit: 0x8A3868,
            Post: 0x77716A, Wire: 0x8A8A86,
        Sun: 0xFFCB52, SunPath: 0xB7A67E);
}
