using ScottPlot;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace CanopySim.Files.Charts;

/// <summary>A stage of the vine on the dates of a chart.</summary>
public readonly record struct StageMark(string Name, DateOnly Date);

/// <summary>A chart as it is laid out: title, units, names of stages, panels below each other, labels at their right.</summary>
public sealed class ChartSheet(string stem, string title, string caption, ChartAxis axis, IReadOnlyList<ChartPanel> panels)
{
    private const float LineHeight = 17;

    private const float LeftMargin = 46;

    private const float Edge = 8;

    /// <summary>How far the label of the highest tick may stand above its field.</summary>
    private const float TickOverhang = 8;

    private const int PngScale = 2;

    /// <summary>
    /// Rows are mostly like the row above: a fifth of the time of trying every filter, for five bytes in a hundred.
    /// </summary>
    private static readonly SKPngEncoderOptions PngOptions = new(SKPngEncoderFilterFlags.Up, 4);

    /// <summary>Stem of its files.</summary>
    public string Stem => stem;

    public string Title => title;

    /// <summary>One line that says what to see.</summary>
    public string Caption => caption;

    public IReadOnlyList<StageMark> Stages { get; init; } = [];

    /// <summary>Whether the classes of leaf age stand at the right, young above old, as on the shoot.</summary>
    public bool HasAgeKey { get; init; }

    /// <summary>Room for labels at the right, wide and narrow [px]; null for what single words take.</summary>
    public (float Wide, float Narrow)? EndLabelRoom { get; init; }

    /// <summary>Written in an empty panel, why there is nothing.</summary>
    public string WhenEmpty { get; init; } = "nothing to show for this season";

    public ChartPicture Picture() => new(
        stem, title, caption, Png(ChartSize.Wide), Svg(ChartSize.Wide), Svg(ChartSize.Narrow));

    public byte[] Png(ChartSize size)
    {
        using var surface = SKSurface.Create(new SKImageInfo(size.Width * PngScale, size.Height * PngScale));
        surface.Canvas.Scale(PngScale);
        Draw(surface.Canvas, size);
        using var pixels = surface.PeekPixels();
        using var data = pixels.Encode(PngOptions)
            ?? throw new InvalidOperationException($"The chart {stem} could not be written as PNG.");
        return data.ToArray();
    }

    public string Svg(ChartSize size) => SvgDocument.Render(size, title, caption, canvas => Draw(canvas, size));

    /// <summary>Draws it, and says where its panels lie.</summary>
    public IReadOnlyList<ChartField> Draw(SKCanvas canvas, ChartSize size, ChartSurface? surface = null)
    {
        var on = surface ?? ChartSurface.Day;
        List<ChartField> fields = [];
        using (var paper = new SKPaint { Color = new SKColor(0xFF000000 | on.Of(ChartStyle.Paper)) })
        {
            canvas.DrawRect(0, 0, size.Width, size.Height, paper);
        }

        var y = DrawTitle(canvas, size, on);
        var right = size.Width - RightMargin(size);
        var labels = PlaceStages(size, right);
        var rows = labels.Count == 0 ? 0 : labels.Max(l => l.Row) + 1;
        var bottomMargin = TickLines(size) * LineHeight + (axis.Name is null ? 6 : LineHeight + 8);
        var units = panels.Select(p => ChartText.Wrap(p.Unit, ChartStyle.TextSize, size.Width - (2 * Edge))).ToList();
        var gap = TickOverhang + 2;
        var stagesHeight = rows == 0 ? 0 : (rows * 2 * LineHeight) + TickOverhang;
        var headings = units.Sum(u => u.Count) * LineHeight + (6 * panels.Count);
        var height =
            (size.Height - y - stagesHeight - bottomMargin - headings - (gap * (panels.Count - 1))) / panels.Count;
        for (var i = 0; i < panels.Count; i++)
        {
            if (i > 0) y += gap;
            var unitBaseline = y + LineHeight - 3;
            y += (units[i].Count * LineHeight) + 6;
            if (i == 0) y += stagesHeight;

            var data = new SKRect(LeftMargin, y, right, y + height);
            var isLast = i == panels.Count - 1;
            DrawPanel(canvas, panels[i], data, size, isLast ? bottomMargin : 0, on);
            fields.Add(new ChartField(data.Left, data.Top, data.Right, data.Bottom, axis.Min, axis.Max));
            if (i == 0) DrawStages(canvas, labels, y - TickOverhang, y, on);
            foreach (var line in units[i])
            {
                ChartText.Draw(canvas, line, Edge, unitBaseline, ChartStyle.TextSize, on.Of(ChartStyle.QuietText));
                unitBaseline += LineHeight;
            }

            DrawEndLabels(canvas, panels[i], data, size, on);
            y += height;
        }

        if (HasAgeKey && panels.Any(p => !p.IsEmpty)) DrawAgeKey(canvas, right + (size.IsNarrow ? 8 : 14), y - height, on);
        if (axis.Name is { } name)
        {
            var middle = (LeftMargin + right - ChartText.Width(name, ChartStyle.TextSize)) / 2;
            ChartText.Draw(canvas, name, middle, size.Height - 8, ChartStyle.TextSize, on.Of(ChartStyle.QuietText));
        }

        return fields;
    }

    private float DrawTitle(SKCanvas canvas, ChartSize size, ChartSurface on)
    {
        var y = Edge;
        foreach (var line in ChartText.Wrap(title, ChartStyle.TitleSize, size.Width - (2 * Edge), strong: true))
        {
            y += ChartStyle.TitleSize + 4;
            ChartText.Draw(canvas, line, Edge, y - 4, ChartStyle.TitleSize, on.Of(ChartStyle.Text), strong: true);
        }

        return y;
    }

    private float RightMargin(ChartSize size)
    {
        if (HasAgeKey) return size.IsNarrow ? 86 : 98;
        if (EndLabelRoom is { } room) return size.IsNarrow ? room.Narrow : room.Wide;
        return panels.All(p => p.EndLabels.Count == 0) ? 24 : size.IsNarrow ? 88 : 124;
    }

    private int TickLines(ChartSize size) => axis.Ticks(size).Any(t => t.Label.Contains('\n')) ? 2 : 1;

    private float PixelOf(double x, float right) =>
        (float)(LeftMargin + ((x - axis.Min) / (axis.Max - axis.Min) * (right - LeftMargin)));

    private List<(StageMark Stage, float X, float Left, int Row)> PlaceStages(ChartSize size, float right)
    {
        List<(StageMark, float, float, int)> placed = [];
        List<float> rowEnds = [];
        foreach (var stage in Stages.Where(s =>
            ChartAxis.PlaceOf(s.Date) >= axis.Min && ChartAxis.PlaceOf(s.Date) <= axis.Max))
        {
            var x = PixelOf(ChartAxis.PlaceOf(stage.Date), right);
            var width = Math.Max(
                ChartText.Width(stage.Name, ChartStyle.TextSize),
                    ChartText.Width(DateText(stage), ChartStyle.TextSize));
            var left = Math.Clamp(x - (width / 2), Edge, Math.Max(Edge, size.Width - Edge - width));
            var row = rowEnds.FindIndex(end => end + 6 < left);
            if (row < 0)
            {
                row = rowEnds.Count;
                rowEnds.Add(0);
            }

            rowEnds[row] = left + width;
            placed.Add((stage, x, left, row));
        }

        return placed;
    }

    private static string DateText(StageMark stage) => ChartAxis.DayText(stage.Date, isShort: true);

    private static void DrawStages(
        SKCanvas canvas, List<(StageMark Stage, float X, float Left, int Row)> labels, float bottom, float fieldTop, ChartSurface on)
    {
        using var line = new SKPaint { Color = new SKColor(0xFF000000 | on.Of(ChartStyle.StageLine)), StrokeWidth = 1, IsAntialias = true };
        using var paper = new SKPaint { Color = new SKColor(0xFF000000 | on.Of(ChartStyle.Paper)) };
        foreach (var (_, x, _, row) in labels)
        {
            canvas.DrawLine(x, bottom - (row * 2 * LineHeight), x, fieldTop, line);
        }

        foreach (var (stage, x, left, row) in labels)
        {
            var y = bottom - (row * 2 * LineHeight);
            var width = ChartText.Width(stage.Name, ChartStyle.TextSize);
            if (labels.Any(l => l.Row > row)) canvas.DrawRect(left - 2, y - (2 * LineHeight) + 1, width + 4, (2 * LineHeight) - 2, paper);
            ChartText.Draw(canvas, stage.Name, left, y - LineHeight - 3, ChartStyle.TextSize, on.Of(ChartStyle.Text));
            ChartText.Draw(canvas, DateText(stage), left, y - 5, ChartStyle.TextSize, on.Of(ChartStyle.QuietText));
        }
    }

    private void DrawPanel(SKCanvas canvas, ChartPanel panel, SKRect data, ChartSize size, float bottomMargin, ChartSurface on)
    {
        var plot = panel.Plot;
        ChartStyle.Apply(plot, on);
        var (bottom, top) = panel.Range;
        plot.Axes.SetLimits(axis.Min, axis.Max, bottom, top);
        plot.Axes.Bottom.TickGenerator = new NumericManual(
            [.. axis.Ticks(size).Select(t => Tick.Major(t.Place, bottomMargin > 0 ? t.Label : ""))]);
        plot.Axes.Left.TickGenerator = panel.IsEmpty || !panel.HasScale
            ? new NumericManual()
            : new NumericAutomatic
            {
                MinimumTickSpacing = 28,
                LabelFormatter = v =>
                Measure.Number(v, Decimals(top - bottom))
            };
        plot.Grid.IsVisible = !panel.IsEmpty;
        plot.Layout.Fixed(
            new PixelPadding(data.Left, size.Width - data.Right, Math.Max(bottomMargin, TickOverhang), TickOverhang));
        panel.Finish(Stages.Select(s => ChartAxis.PlaceOf(s.Date)));
        panel.ColorFor(on);

        // ScottPlot clears all of the canvas that it is given: it gets the panel and no more, and the words come after
        // it.
        canvas.Save();
        canvas.Translate(0, data.Top - TickOverhang);
        var below = Math.Max(bottomMargin, TickOverhang);
        var figure = new PixelRect(0, size.Width, TickOverhang + data.Height + below, 0);
        canvas.ClipRect(new SKRect(0, 0, figure.Right, figure.Bottom));
        plot.Render(canvas, figure);
        canvas.Restore();
        if (!panel.IsEmpty) return;
        var x = (data.Left + data.Right - ChartText.Width(WhenEmpty, ChartStyle.TextSize)) / 2;
        ChartText.Draw(canvas, WhenEmpty, Math.Max(Edge, x), data.MidY, ChartStyle.TextSize, on.Of(ChartStyle.QuietText));
    }

    private static int Decimals(double range) => range >= 5 ? 0 : range >= 0.5 ? 1 : 2;

    private static void DrawEndLabels(SKCanvas canvas, ChartPanel panel, SKRect data, ChartSize size, ChartSurface on)
    {
        var (bottom, top) = panel.Range;
        var x = data.Right + 8;
        var placed = panel.EndLabels
            .Select(l => (Label: l, Lines: ChartText.Wrap(l.Text, ChartStyle.TextSize, size.Width - x - 2)))
            .Select(l =>
                (l.Label, l.Lines, Y: (float)(data.Bottom - ((l.Label.Y - bottom) / (top - bottom) * data.Height))))
            .OrderBy(l => l.Y)
            .ToList();
        var tops = new float[placed.Count];
        var free = data.Top - LineHeight;
        for (var i = 0; i < placed.Count; i++)
        {
            var (_, lines, y) = placed[i];
            tops[i] = Math.Max(free, y - ((lines.Count - 1) * LineHeight / 2) + 4 - LineHeight);
            free = tops[i] + (lines.Count * LineHeight);
        }

        // Many that end low make room upwards, or the last would stand below the chart.
        var floor = data.Bottom + 4;
        for (var i = placed.Count - 1; i >= 0; i--)
        {
            tops[i] = Math.Min(tops[i], floor - (placed[i].Lines.Count * LineHeight));
            floor = tops[i];
        }

        for (var i = 0; i < placed.Count; i++)
        {
            for (var line = 0; line < placed[i].Lines.Count; line++)
                ChartText.Draw(canvas, placed[i].Lines[line], x, tops[i] + ((line + 1) * LineHeight), ChartStyle.TextSize, on.Of(placed[i].Label.Rgb));
        }
    }

    private static void DrawAgeKey(SKCanvas canvas, float x, float top, ChartSurface on)
    {
        var y = top;
        foreach (var line in (string[])["leaf age,", "days"])
        {
            y += LineHeight;
            ChartText.Draw(canvas, line, x, y - 4, ChartStyle.TextSize, on.Of(ChartStyle.QuietText));
        }

        foreach (var ages in ChartStyle.AgeClasses)
        {
            y += LineHeight + 2;
            using var swatch = new SKPaint { Color = new SKColor(0xFF000000 | ages.Rgb) };
            canvas.DrawRect(x, y - 15, 13, 13, swatch);
            ChartText.Draw(canvas, ages.Label, x + 19, y - 4, ChartStyle.TextSize, on.Of(ChartStyle.Text));
        }
    }
}
