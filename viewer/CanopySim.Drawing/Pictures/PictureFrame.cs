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

    private const float LeastScale = 0.5f;

    // Below this width [heights of text] the legend stands under the words, not beside them.
    private const int StackedBelow = 58;

    private const int MostLines = 3;

    private readonly SceneTheme _theme;
    private readonly int _width;
    private readonly float _scale;
    private readonly bool _isStacked;

    public PictureFrame(PictureOptions options)
    {
        (_theme, _width) = (options.Theme, options.Width);
        _scale = options.TextScale ?? Math.Clamp(options.Width / 1280f, LeastScale, 3);
        _isStacked = options.Width < StackedBelow * TextSize;
        BandHeight = Math.Min(options.Height / 2, (int)(_isStacked
            ? (1.9f * TitleSize) + (MostLines * LineStep) + LegendHeight
            : (3.6f * TitleSize) + (2.2f * TextSize)));
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

    private float LineStep => 1.4f * TextSize;

    // Name and unit, the colors, the numbers.
    private float LegendHeight => 5.2f * TextSize;

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
        var barWidth = _isStacked ? _width - (2 * Margin) - (2 * TextSize) : Math.Min(0.36f * _width, 420 * _scale);
        var barLeft = _isStacked ? Margin : _width - Margin - barWidth;
        var textWidth = _isStacked ? _width - (2 * Margin) : barLeft - (3 * Margin);
        var baseline = SceneHeight + (1.5f * TitleSize);
        ChartText.Draw(
            canvas, Fit(title, TitleSize, textWidth, strong: true), Margin, baseline, TitleSize, _theme.Text,
            strong: true);
        var room = _isStacked
            ? (int)(((BandHeight - (1.9f * TitleSize) - LegendHeight) / LineStep) + 0.5f)
            : MostLines;
        foreach (var line in Lines(sentence, textWidth, room))
        {
            baseline += LineStep;
            ChartText.Draw(canvas, line, Margin, baseline, TextSize, _theme.QuietText);
        }

        var legendBase = _isStacked
            ? SceneHeight + BandHeight - LegendHeight + (1.4f * TextSize)
            : SceneHeight + (1.5f * TitleSize);
        DrawLegend(canvas, legend, barLeft, barWidth, legendBase);
    }

    private void DrawLegend(SKCanvas canvas, Legend legend, float left, float width, float baseline)
    {
        ChartText.Draw(canvas, legend.Title, left, baseline, TextSize, _theme.Text, strong: true);
        var after = left + ChartText.Width(legend.Title + "  ", TextSize, strong: true);
        ChartText.Draw(
            canvas, Fit(legend.Unit, TextSize, _width - (0.5f * Margin) - after), after, baseline, TextSize,
            _theme.QuietText);
        var (top, height) = (baseline + (0.6f * TextSize), 0.9f * TextSize);
        for (var i = 0; i < legend.Table.Length; i++)
        {
            using var color = new SKPaint { Color = Solid(legend.Table[i]) };
            var (from, to) = (left + (width * i / legend.Table.Length), left + (width * (i + 1) / legend.Table.Length));
            // Whole pixels: no seam between neighbors.
            canvas.DrawRect(MathF.Floor(from), top, MathF.Ceiling(to) - MathF.Floor(from), height, color);
        }

        using var tick = new SKPaint { Color = Solid(_theme.QuietText), StrokeWidth = Math.Max(1, _scale) };
        foreach (var (share, _) in legend.Numbers)
        {
            var x = left + (width * (float)share);
            canvas.DrawLine(x, top + height, x, top + height + (0.3f * TextSize), tick);
        }

        foreach (var (at, text) in Spread(legend.Numbers, left, width))
            ChartText.Draw(canvas, text, at, top + height + (1.4f * TextSize), TextSize, _theme.Text);
    }

    // The numbers that have room, the last one always, with their left edges.
    private List<(float At, string Text)> Spread(IReadOnlyList<LegendNumber> numbers, float left, float width)
    {
        List<(float At, string Text)> kept = [];
        var free = float.MaxValue;
        foreach (var (share, text) in numbers.Reverse())
        {
            var wide = ChartText.Width(text, TextSize);
            var at = Math.Clamp(
                left + (width * (float)share) - (0.5f * wide), left - (0.5f * Margin),
                left + width + (0.8f * Margin) - wide);
            if (at + wide + (0.5f * TextSize) > free) continue;
            kept.Add((at, text));
            free = at;
        }

        return kept;
    }

    private IEnumerable<string> Lines(string sentence, float width, int most)
    {
        var lines = ChartText.Wrap(sentence, TextSize, width).ToList();
        if (most <= 0) return [];
        return lines.Count <= most ? lines
            : [.. lines.Take(most - 1), Fit(string.Join(' ', lines.Skip(most - 1)), TextSize, width)];
    }

    private static string Fit(string text, float size, float width, bool strong = false)
    {
        if (ChartText.Width(text, size, strong) <= width) return text;
        for (var length = text.Length - 1; length > 0; length--)
        {
            var cut = text[..length].TrimEnd(' ', ',', ';') + "…";
            if (ChartText.Width(cut, size, strong) <= width) return cut;
        }

        return "";
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
