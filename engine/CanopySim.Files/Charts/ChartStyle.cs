using CanopySim.Files.Fonts;
using ScottPlot;

namespace CanopySim.Files.Charts;

/// <summary>
/// The one place that says how charts look, for the runner, the report and the viewer. Colors are 0xRRGGBB.
/// </summary>
public static class ChartStyle
{
    public const uint Paper = 0xFAF8F4;

    public const uint Night = 0x16181A;

    public const uint Text = 0x22261F;

    public const uint TextOnNight = 0xE8E6DF;

    /// <summary>Units, captions and the names of stages: second to the data, still 4.5 : 1 on paper.</summary>
    public const uint QuietText = 0x5A5F55;

    public const uint QuietTextOnNight = 0xA9ABA2;

    /// <summary>What can be acted on, and nothing else.</summary>
    public const uint Accent = 0x3F5F7F;

    public const uint AccentOnNight = 0x8FB1D1;

    public const uint Grid = 0xE6E3DB;

    public const uint StageLine = 0x8A8E84;

    /// <summary>
    /// Still 12 px where a page shows a chart a little smaller than it was drawn, as paper and phones do.
    /// </summary>
    public const float TextSize = 13;

    public const float TitleSize = 17;

    /// <summary>A blue that cividis holds too: the one line of a chart that has no ages to show.</summary>
    public const uint Line = 0x22446B;

    /// <summary>Single days behind their running mean.</summary>
    public const uint FaintLine = 0xB9BEC2;

    /// <summary>A band that holds four of five; lightest to darkest of one hue with what follows and the line.</summary>
    public const uint FourOfFive = 0xC9D3DC;

    /// <summary>A band that holds half.</summary>
    public const uint Half = 0x8FA6BC;

    /// <summary>
    /// Lines of options side by side, in turn: as dark as text must be on paper, apart in lightness or hue to every
    /// eye. What
    /// repeats a color is told apart by its dashes and by the name at its end.
    /// </summary>
    public static IReadOnlyList<uint> OptionLines { get; } = [Line, 0x8F5E00, 0x6B6F67];

    /// <summary>Days of leaf age in a class of color.</summary>
    public const int AgeClassDays = 20;

    /// <summary>Young to old, blue to yellow; the last class holds every older leaf.</summary>
    public static IReadOnlyList<AgeClass> AgeClasses { get; } = [.. MakeAgeClasses(8)];

    /// <summary>
    /// The color of a leaf by its age [d], without steps, passing through each class's color at its middle.
    /// </summary>
    public static uint AgeColor(double ageDays) =>
        Cividis.At(((ageDays / AgeClassDays) - 0.5) / (AgeClasses.Count - 1));

    /// <summary>The class that a leaf of this age [d] belongs to.</summary>
    public static AgeClass AgeClassOf(double ageDays) =>
        AgeClasses[Math.Clamp((int)Math.Floor(ageDays / AgeClassDays), 0, AgeClasses.Count - 1)];

    /// <summary>Surface, grid, axes and fonts of a plot; data come after.</summary>
    public static void Apply(Plot plot, ChartSurface? surface = null)
    {
        var on = surface ?? ChartSurface.Day;
        EmbeddedFonts.Register();
        plot.FigureBackground.Color = ColorOf(on.Of(Paper));
        plot.DataBackground.Color = ColorOf(on.Of(Paper));
        plot.Axes.Frame(false);
        plot.Axes.Title.IsVisible = false;
        plot.Grid.MajorLineColor = ColorOf(on.Of(Grid));
        plot.Grid.MajorLineWidth = 1;
        foreach (var axis in plot.Axes.GetAxes())
        {
            axis.TickLabelStyle.FontName = EmbeddedFonts.Family;
            axis.TickLabelStyle.FontSize = TextSize;
            axis.TickLabelStyle.ForeColor = ColorOf(on.Of(Text));
            axis.MajorTickStyle.Length = 0;
            axis.MinorTickStyle.Length = 0;
        }
    }

    public static Color ColorOf(uint rgb) => new((byte)(rgb >> 16), (byte)(rgb >> 8), (byte)rgb);

    public static string HexOf(uint rgb) => $"#{rgb:X6}";

    private static IEnumerable<AgeClass> MakeAgeClasses(int count)
    {
        for (var i = 0; i < count; i++)
        {
            var from = i * AgeClassDays;
            var isLast = i == count - 1;
            yield return new AgeClass(
                i,
                from,
                isLast ? null : from + AgeClassDays,
                Cividis.At(i / (count - 1.0)),
                isLast ? $"{from} +" : $"{from}–{from + AgeClassDays}");
        }
    }
}

/// <summary>Leaves of like age [d], the first day in, the last day out; without a last day, every older leaf.</summary>
public sealed record AgeClass(int Index, int FromD, int? ToD, uint Rgb, string Label);
