using System.Globalization;
using CanopySim.Files.Charts;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>How the screen reads, and every key.</summary>
public static class HelpPanel
{
    /// <summary>Keys and what they do, in the order of use.</summary>
    public static IReadOnlyList<(string Keys, string Does)> Keys { get; } =
    [
        ("← →", "day before, day after"),
        ("Page up, Page down", "ten days before, ten days after"),
        ("Home, End", "first day, last day"),
        ("Shift+← →", "hour before, hour after"),
        ("Space", "play the season, or pause"),
        ("D", "play the day, or pause"),
        ("1 to 9", "color the leaves by age, efficiency and so on"),
        ("R", "range of the colors: always the same, or fitted"),
        ("C L A Y ?", "panels: colors, leaf, charts, try it, help"),
        ("N, B", "next leaf up the shoots, one leaf back"),
        ("↑ ↓", "in the charts: the chart before, the chart after"),
        ("S", "the season as it was, or as tried"),
        ("Ctrl+arrows", "turn the view; with Shift, shift it"),
        ("I, O", "nearer, farther"),
        ("W, X", "look along the row, across it"),
        ("Q, Z", "look from the sun, from above"),
        ("V", "the whole vine again"),
        ("+, −", "larger text, smaller text"),
        ("T, U", "light or dark; metric or US units"),
        ("Tab, Shift+Tab", "next control, control before; Enter presses it"),
        ("Ctrl+Q", "close the window"),
        ("Escape", "put the panel away, then let go of the leaf"),
    ];

    public static void Add(Sheet sheet, Column column)
    {
        var (model, state) = (sheet.Model, sheet.State);
        column.Text("help.text", "Size of text", TextKind.Strong);
        column.Gap(4);
        column.Buttons(
            ("text.smaller", "Smaller", "−", "Smaller text", false, () => model.ScaleText(-1)),
            ("text.larger", "Larger", "+", "Larger text", false, () => model.ScaleText(1)));
        column.Gap(10);
        column.Text("help.theme", "Surfaces and units", TextKind.Strong);
        column.Gap(4);
        column.Buttons(
            ("theme.light", "Light", "T", "Dark text on light surfaces", state.Theme == ScreenTheme.Light, () =>
                model.SetTheme(ScreenTheme.Light)),
            ("theme.dark", "Dark", "T", "Light text on dark surfaces", state.Theme == ScreenTheme.Dark, () =>
                model.SetTheme(ScreenTheme.Dark)),
            ("units.metric", "Metric", "U", "Metres, grams, degrees Celsius", state.Units == Units.Metric, () =>
                model.SetUnits(Units.Metric)),
            ("units.us", "US", "U", "Feet, ounces, degrees Fahrenheit", state.Units == Units.Us, () =>
                model.SetUnits(Units.Us)));
        column.Rule("help.rule");
        column.Text(
            "help.pointer", "Drag the picture to turn it, with Shift or the second button to shift it; the wheel comes "
                + "nearer. A click on a leaf tells about it.");
        column.Gap(8);
        for (var i = 0; i < Keys.Count; i++)
            column.Pair(string.Create(CultureInfo.InvariantCulture, $"help.key.{i}"), Capital(Keys[i].Does),
                Keys[i].Keys);
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
