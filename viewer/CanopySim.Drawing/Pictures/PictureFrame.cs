using System.Numerics;
using CanopySim.Drawing.Painting;
using CanopySim.Files.Charts;
using SkiaSharp;

namespace CanopySim.Drawing.Pictures;

/// <summary>
/// What is written on and under a scene: hours on the sun's path, north, the title, a sentence and the legend.
/// </summary>
internal sealed class PictureFrame
{
    private const float LeastText = 11;

    private readonly SceneTheme _theme;
    private readonly int _width;
    private readonly float _scale;

    public PictureFrame(PictureOptions options)
    {
        (_theme, _width) = (options.Theme, options.Width);
        _scale = options.TextScale ?? Math.Clamp(options.Width / 1280f, 0.5f, 3);
        BandHeight = Math.Min(options.Height / 2, (int)(3.6f * TitleSize) + (int)(2.2f * TextSize));
        SceneHeight = options.Height - BandHeight;
    }

    /// <summary>Under a scene of a height [px]; the options' own is not asked.</summary>
    public static PictureFrame Under(int sceneHeight, PictureOptions options)
    {
        var band = new PictureFrame(options with { Height = int.MaxValue }).BandHeight;
        return new PictureFrame(options with { Height = sceneHeight + band });
    }

    /// <summary>Pixels under the scene.</summary>
    public int BandHeight { get; }

    /// <summary>Pixels of the scene upwards.</summary>
    public int SceneHeight { get; }

    private float TextSize => Math.Max(LeastText, ChartStyle.TextSize * _scale);

    private float TitleSize => Math.Max(LeastText + 2, ChartStyle.TitleSize * _scale);

    private float Margin => 16 * _scale;

    /// <summary>Writes on the scene.</summary>
    public void DrawMarks(SKCanvas canvas, RecordingScene scene)
    {
        var camera = scene.Camera;
        if (camera.PixelOf(SkyMarks.NorthTip(scene.Block, camera), _width, SceneHeight) is { } north) Mark(canvas, "N",
            north);
        var (middle, radius) = (SkyMarks.MiddleOf(scene.Block, camera), SkyMarks.RadiusOf(scene.Block, camera));
        foreach (var (hour, direction) in scene.Path)
        {
            if (hour != Math.Round(hour) || hour % 3 != 0) continue;
            if (camera.PixelOf(middle + (radius * direction), _width, SceneHeight) is { } at) Mark(canvas,
                $"{hour:0} h", at);
        }
    }

    /// <summary>Draws the band under the scene.</summary>
    public void DrawBand(SKCanvas canvas, string title, string sentence, Legend legend)
    {
        using var paper = new SKPaint { Color = Solid(_theme.Surface) };
        canvas.DrawRect(0, SceneHeight, _width, BandHeight, paper);
        var barWidth = Math.Min(0.36f * _width, 420 * _scale);
        var barLeft = _width - Margin - barWidth;
        var textWidth = barLeft - (2 * Margin) - Margin;
        var baseline = SceneHeight + (1.5f * TitleSize);
        ChartText.Draw(canvas, title, Margin, baseline, TitleSize, _theme.Text, strong: true);
        foreach (var line in ChartText.Wrap(sentence, TextSize, textWidth).Take(3))
        {
            baseline += 1.4f * TextSize;
            ChartText.Draw(canvas, line, Margin, baseline, TextSize, _theme.QuietText);
        }

        DrawLegend(canvas, legend, barLeft, barWidth);
    }

    private void DrawLegend(SKCanvas canvas, Legend legend, float left, float width)
    {
        var baseline = SceneHeight + (1.5f * TitleSize);
        ChartText.Draw(canvas, legend.Title, left, baseline, TextSize, _theme.Text, strong: true);
        var after = left + ChartText.Width(legend.Title + "  ", TextSize, strong: true);
        ChartText.Draw(canvas, legend.Unit, after, baseline, TextSize, _theme.QuietText);
        var (top, height) = (baseline + (0.6f * TextSize), 0.9f * TextSize);
        for (var i = 0; i < legend.Table.Length; i++)
        {
            using var color = new SKPaint { Color = Solid(legend.Table[i]) };
            var (from, to) = (left + (width * i / legend.Table.Length), left + (width * (i + 1) / legend.Table.Length));
            // Whole pixels: no seam between neighbors.
            canvas.DrawRect(MathF.Floor(from), top, MathF.Ceiling(to) - MathF.Floor(from), height, color);
        }

        using var tick = new SKPaint { Color = Solid(_theme.QuietText), StrokeWidth = Math.Max(1, _scale) };
        foreach (var (share, text) in legend.Numbers)
        {
            var x = left + (width * (float)share);
            canvas.DrawLine(x, top + height, x, top + height + (0.3f * TextSize), tick);
            var textWidth = ChartText.Width(text, TextSize);
            var at = Math.Clamp(x - (0.5f * textWidth), left - (0.5f * Margin), left + width + (0.8f * Margin)
                - textWidth);
            ChartText.Draw(canvas, text, at, top + height + (1.4f * TextSize), TextSize, _theme.Text);
        }
    }

    private void Mark(SKCanvas canvas, string text, Vector2 at)
    {
        var size = 0.92f * TextSize;
        var width = ChartText.Width(text, size);
        var (left, baseline) = (at.X + (0.5f * size), at.Y - (0.45f * size));
        if (left < 0 || left + width > _width || baseline - size < 0 || baseline + (0.3f * size) > SceneHeight) return;
        using var paper = new SKPaint { Color = Solid(_theme.Surface).WithAlpha(200), IsAntialias = true };
        canvas.DrawRoundRect(left - (0.25f * size), baseline - (0.95f * size), width + (0.5f * size), 1.25f * size,
            0.3f * size, 0.3f * size, paper);
        ChartText.Draw(canvas, text, left, baseline, size, _theme.QuietText);
    }

    private static SKColor Solid(uint rgb) => new(0xFF000000 | rgb);
}
