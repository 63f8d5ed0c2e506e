using System.Runtime.InteropServices;
using CanopySim.Training;
using CanopySim.Views;
using SkiaSharp;

namespace CanopySim.Files.Charts;

/// <summary>
/// A canopy from the side, along the row and from above, square and to scale, its leaves in the colors of their ages.
/// Pictures of one frame have one scale, whatever stands in them.
/// </summary>
public static class CanopyPictures
{
    public const string Front = "canopy-from-the-side";

    public const string Along = "canopy-along-the-row";

    public const string Above = "canopy-from-above";

    // Width and height of a picture [px], twice what a page shows it at; each pixel is the mean of 2 × 2.
    private const int Size = 480;
    private const int Samples = 2;

    /// <summary>Colors of what is no leaf.</summary>
    public const uint Wood = 0x8A7560;
    public const uint Cluster = 0xA23B72;
    private const float LineWidth = 2;

    // Ground below, free air above and beside the canopy [m].
    private const double Below = 0.1;
    private const double Margin = 0.1;
    private const double SmallestFrame = 1.5;

    /// <summary>
    /// Width and height of a frame that holds every canopy of a comparison [m], but never much more than a row.
    /// </summary>
    public static double FrameOf(IEnumerable<(CanopyPortrait Portrait, Scenario Scenario)> canopies)
    {
        var frame = SmallestFrame;
        foreach (var (portrait, scenario) in canopies)
        {
            var (height, halfWidth) = portrait.Extent;
            frame = Math.Max(frame, Math.Max(height, scenario.Trellis.TopWireHeightOrDefault) + Below + Margin);
            frame = Math.Max(frame, Math.Min((2 * halfWidth) + Margin, scenario.Rows.Spacing + Margin));
        }

        return frame;
    }

    /// <summary>The three views; none where nothing grew.</summary>
    /// <param name="portrait">The canopy.</param>
    /// <param name="scenario">Its block.</param>
    /// <param name="frame">Width and height of a picture [m].</param>
    /// <param name="units">Of the bar that tells the scale.</param>
    public static IReadOnlyList<ChartPicture> All(CanopyPortrait? portrait, Scenario scenario, double frame,
        Units units)
    {
        if (portrait is null) return [];
        var day = $"{ChartAxis.DayText(portrait.Date, isShort: false)} {portrait.Date.Year}";
        var when = $"{scenario.Name} on {day}, {WhenWords(portrait)}";
        var (height, halfWidth) = portrait.Extent;
        var top = Measure.Length.Text(units, 100 * height, 0);
        var width = Measure.Length.Text(units, 200 * halfWidth, 0);
        var wires = scenario.Trellis.Form == TrellisForm.Bush ? "" : ", wires thin lines and one post drawn";
        return
        [
            Picture(portrait, scenario, ViewSide.Front, frame, units, Front, "From the side",
                $"{when}: the row from its right, highest leaf {top} above the ground{wires}."),
            Picture(portrait, scenario, ViewSide.Along, frame, units, Along, "Along the row",
                $"{when}: along the row, {width} wide where it is widest."),
            Picture(portrait, scenario, ViewSide.Above, frame, units, Above, "From above",
                $"{when}: the row from above, running from left to right."),
        ];
    }

    /// <summary>When the canopy stood so.</summary>
    public static string WhenWords(CanopyPortrait portrait) =>
        portrait.IsAtVeraison ? "at veraison" : "with the most leaf of the season";

    private static ChartPicture Picture(
        CanopyPortrait portrait, Scenario scenario, ViewSide side, double frame, Units units, string stem,
        string title, string caption)
    {
        using var surface = SKSurface.Create(new SKImageInfo(Size, Size));
        var canvas = surface.Canvas;
        canvas.Clear(Solid(ChartStyle.Paper));
        var middle = side == ViewSide.Above ? 0.5 * frame : frame - Below;
        using var line = new SKPaint { Color = Solid(ChartStyle.StageLine), StrokeWidth = LineWidth };
        if (side != ViewSide.Above)
        {
            var ground = (float)(middle / frame * Size);
            canvas.DrawLine(0, ground, Size, ground, line);
        }

        var trellis = new TrellisDrawing(scenario.Trellis, scenario.Rows.Spacing, side, frame, middle, Size);
        trellis.DrawBehind(canvas);
        using (var canopy = Canopy(portrait, side, frame, middle))
            canvas.DrawBitmap(canopy, 0, 0, SKSamplingOptions.Default);
        trellis.DrawBefore(canvas);
        DrawScale(canvas, frame, units);
        using var pixels = surface.PeekPixels();
        using var data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, 6))
            ?? throw new InvalidOperationException($"The picture {stem} could not be written as PNG.");
        return new ChartPicture(stem, title, caption, data.ToArray(), "", "");
    }

    private static SKBitmap Canopy(CanopyPortrait portrait, ViewSide side, double frame, double middle)
    {
        var step = frame / (Size * Samples);
        var view = CanopyView.Of(portrait.Scene, side, step);
        var colors = Enumerable.Range(0, portrait.Scene.SurfaceCount).Select(surface => ColorOf(portrait, surface))
            .ToArray();
        var left = side == ViewSide.Along ? -0.5 * frame : 0;
        var pixels = new uint[Size * Size];
        for (var row = 0; row < Size; row++)
        {
            for (var column = 0; column < Size; column++) pixels[(row * Size) + column] = Pixel(column, row);
        }

        var bitmap = new SKBitmap(new SKImageInfo(Size, Size, SKColorType.Rgba8888, SKAlphaType.Unpremul));
        MemoryMarshal.AsBytes(pixels.AsSpan()).CopyTo(bitmap.GetPixelSpan());
        return bitmap;

        uint Pixel(int column, int row)
        {
            var (red, green, blue, seen) = (0.0, 0.0, 0.0, 0);
            for (var sample = 0; sample < Samples * Samples; sample++)
            {
                var right = left + (step * ((column * Samples) + (sample % Samples) + 0.5));
                var up = middle - (step * ((row * Samples) + (sample / Samples) + 0.5));
                var surface = view.SurfaceAt(right, up, out var brightness);
                if (surface < 0) continue;
                var color = colors[surface];
                seen++;
                red += brightness * (byte)(color >> 16);
                green += brightness * (byte)(color >> 8);
                blue += brightness * (byte)color;
            }

            // Bytes of a pixel stand in memory as red, green, blue, alpha.
            if (seen == 0) return 0;
            var cover = (uint)(255 * seen / (Samples * Samples));
            return (uint)(red / seen) | ((uint)(green / seen) << 8) | ((uint)(blue / seen) << 16) | (cover << 24);
        }
    }

    private static uint ColorOf(CanopyPortrait portrait, int surface) => portrait.Scene.Kinds[surface] switch
    {
        Geometry.SurfaceKind.Blade => ChartStyle.AgeClassOf(portrait.AgeOfSurface[surface]).Rgb,
        Geometry.SurfaceKind.Cluster => Cluster,
        _ => Wood,
    };

    private static void DrawScale(SKCanvas canvas, double frame, Units units)
    {
        var (meters, words) = units == Units.Us ? (0.6096, "2 ft") : (0.5, "0.5 m");
        var (left, y, length) = (16f, Size - 12f, (float)(meters / frame * Size));
        const float TextSize = 2 * ChartStyle.TextSize;
        using var paper = new SKPaint { Color = Solid(ChartStyle.Paper).WithAlpha(210) };
        var width = Math.Max(length, ChartText.Width(words, TextSize));
        canvas.DrawRect(left - 8, y - TextSize - 12, width + 16, TextSize + 24, paper);
        using var bar = new SKPaint { Color = Solid(ChartStyle.Text), StrokeWidth = 2 * LineWidth };
        canvas.DrawLine(left, y, left + length, y, bar);
        ChartText.Draw(canvas, words, left, y - 10, TextSize, ChartStyle.Text);
    }

    private static SKColor Solid(uint rgb) => new(0xFF000000 | rgb);
}
