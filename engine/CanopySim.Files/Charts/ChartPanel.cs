using ScottPlot;
using ScottPlot.Plottables;

namespace CanopySim.Files.Charts;

/// <summary>A point of a line; a value that is not finite leaves a gap.</summary>
public readonly record struct ChartPoint(double X, double Y);

/// <summary>A label beside the right end of a chart, at a height of its own axis.</summary>
public readonly record struct EndLabel(string Text, double Y, uint Rgb);

/// <summary>One field of a chart with its own upright axis. Nothing that is not finite is ever drawn.</summary>
public sealed class ChartPanel(string unit)
{
    private const float LineWidth = 2;

    private const float ThinLineWidth = 1;

    private const float DotSize = 7;

    private const float SeamWidth = 0.8f;

    /// <summary>Free height above the largest value, a share of the range.</summary>
    private const double Headroom = 0.06;

    private readonly List<(uint Rgb, Action<Color> Set)> _colored = [];

    private bool _isFinished;

    public string Unit { get; } = unit;

    public Plot Plot { get; } = new();

    public List<EndLabel> EndLabels { get; } = [];

    public double Lowest { get; private set; }

    public double Highest { get; private set; }

    /// <summary>Upper end of the axis where the quantity has one (a share, a percentage); else from the data.</summary>
    public double? Ceiling { get; init; }

    /// <summary>
    /// Lower end of the axis where zero means nothing, as on a thermometer; else zero is always on it.
    /// </summary>
    public double? Floor { get; init; }

    /// <summary>False where heights only part rows from each other.</summary>
    public bool HasScale { get; init; } = true;

    public bool IsEmpty { get; private set; } = true;

    /// <summary>Lower and upper end of the upright axis.</summary>
    public (double Bottom, double Top) Range
    {
        get
        {
            var range = Math.Max(Highest - Lowest, 1e-9);
            var top = Ceiling ?? (Highest > 0 ? Highest + (Headroom * range) : 0);
            var bottom = Floor ?? (Lowest < 0 ? Lowest - (Headroom * range) : 0);
            return top > bottom ? (bottom, top) : (bottom, bottom + 1);
        }
    }

    public void Line(
        IEnumerable<ChartPoint> points, uint rgb, bool isThin = false, string? label = null,
        LinePattern? pattern = null)
    {
        ChartPoint? last = null;
        foreach (var stretch in Stretches(points))
        {
            var scatter = Plot.Add.Scatter(
                stretch.Select(p => p.X).ToArray(), stretch.Select(p => p.Y).ToArray(), ChartStyle.ColorOf(rgb));
            scatter.LineWidth = isThin ? ThinLineWidth : LineWidth;
            _colored.Add((rgb, color => scatter.Color = color));
            if (pattern is { } dashes) scatter.LinePattern = dashes;
            scatter.MarkerSize = stretch.Count == 1 ? 3 * LineWidth : 0;
            foreach (var point in stretch) Cover(point.Y);
            last = stretch[^1];
        }

        if (last is { } end && label is not null) EndLabels.Add(new EndLabel(label, end.Y, rgb));
    }

    /// <summary>Single observations: dots without a line between them.</summary>
    public void Dots(IEnumerable<ChartPoint> points, uint rgb, string? label = null)
    {
        var finite = points.Where(point => double.IsFinite(point.X) && double.IsFinite(point.Y)).ToList();
        if (finite.Count == 0) return;
        var scatter = Plot.Add.ScatterPoints(finite.Select(p => p.X).ToArray(), finite.Select(p => p.Y).ToArray());
        scatter.MarkerSize = DotSize;
        scatter.Color = ChartStyle.ColorOf(rgb);
        _colored.Add((rgb, color => scatter.Color = color));
        foreach (var point in finite) Cover(point.Y);
        if (label is not null) EndLabels.Add(new EndLabel(label, finite[^1].Y, rgb));
    }

    /// <summary>A level across the whole panel, dashed: a target or a mean, not a measurement.</summary>
    public void Level(double y, string label, double? fromX = null, double? toX = null)
    {
        if (!double.IsFinite(y)) return;
        var color = ChartStyle.ColorOf(ChartStyle.QuietText);
        if (fromX is { } from && toX is { } to)
        {
            var line = Plot.Add.Line(from, y, to, y);
            (line.LineColor, line.LineWidth, line.LinePattern) = (color, ThinLineWidth, LinePattern.Dashed);
            _colored.Add((ChartStyle.QuietText, own => line.LineColor = own));
        }
        else
        {
            var line = Plot.Add.HorizontalLine(y, ThinLineWidth, color, LinePattern.Dashed);
            _colored.Add((ChartStyle.QuietText, own => line.LineColor = own));
        }

        Cover(y);
        EndLabels.Add(new EndLabel(label, y, ChartStyle.QuietText));
    }

    /// <summary>Between two heights at each place.</summary>
    public void Band(IReadOnlyList<(double X, double Bottom, double Top)> edges, uint rgb)
    {
        var finite = edges.Where(e => double.IsFinite(e.X) && double.IsFinite(e.Bottom) && double.IsFinite(e.Top))
            .ToList();
        if (finite.Count == 0) return;

        // A single day has no width of its own.
        if (finite.Count == 1)
        {
            var only = finite[0];
            finite = [only with { X = only.X - 0.5 }, only with { X = only.X + 0.5 }];
        }

        var outline = finite.Select(e => new Coordinates(e.X, e.Top))
            .Concat(finite.AsEnumerable().Reverse().Select(e => new Coordinates(e.X, e.Bottom)));
        Polygon polygon = Plot.Add.Polygon(outline.ToArray());
        polygon.FillColor = ChartStyle.ColorOf(rgb);

        // Neighbors of a ramp are too alike to part by their color alone.
        (polygon.LineColor, polygon.LineWidth) = (ChartStyle.ColorOf(ChartStyle.Paper), SeamWidth);
        _colored.Add((ChartStyle.Paper, color => polygon.LineColor = color));
        foreach (var (_, bottom, top) in finite)
        {
            Cover(bottom);
            Cover(top);
        }
    }

    /// <summary>
    /// Layers one upon the other, the first at the bottom. What is below nothing (a night's loss, a leaf that costs
    /// more
    /// than it brings) hangs down from zero and takes nothing away from the layers above it.
    /// </summary>
    public void Stack(IReadOnlyList<double> xs, IReadOnlyList<(uint Rgb, IReadOnlyList<double> Values)> layers)
    {
        var gains = new double[xs.Count];
        var losses = new double[xs.Count];
        foreach (var (rgb, values) in layers)
        {
            foreach (var band in Pile(xs, values, gains, Math.Max)) Band(band, rgb);
            foreach (var band in Pile(xs, values, losses, Math.Min)) Band(band, rgb);
        }
    }

    /// <summary>
    /// Stage lines, and a line at zero where something hangs below it; over the data, and once for all sizes.
    /// </summary>
    public void Finish(IEnumerable<double> stages)
    {
        if (_isFinished) return;
        _isFinished = true;
        var color = ChartStyle.ColorOf(ChartStyle.StageLine);
        foreach (var place in stages)
        {
            var line = Plot.Add.VerticalLine(place, ThinLineWidth, color, LinePattern.Solid);
            _colored.Add((ChartStyle.StageLine, own => line.LineColor = own));
        }

        if (Lowest >= 0) return;
        var zero = Plot.Add.HorizontalLine(0, ThinLineWidth, color, LinePattern.Solid);
        _colored.Add((ChartStyle.StageLine, own => zero.LineColor = own));
    }

    /// <summary>Turns lines and seams to the colors of the surface that the chart is drawn on next.</summary>
    public void ColorFor(ChartSurface surface)
    {
        foreach (var (rgb, set) in _colored) set(ChartStyle.ColorOf(surface.Of(rgb)));
    }

    /// <summary>
    /// Adds a layer to what is piled up so far, and returns it in the stretches where it has any height: a layer of no
    /// height would still draw its seam.
    /// </summary>
    private static List<List<(double X, double Bottom, double Top)>> Pile(
        IReadOnlyList<double> xs, IReadOnlyList<double> values, double[] pile, Func<double, double, double> keep)
    {
        List<List<(double, double, double)>> bands = [];
        List<(double, double, double)> band = [];
        for (var i = 0; i < xs.Count; i++)
        {
            var height = double.IsFinite(values[i]) ? keep(values[i], 0) : 0;
            var edge = (xs[i], pile[i], pile[i] + height);
            pile[i] += height;
            if (height != 0)
            {
                // A layer grows out of the day before its first.
                if (band.Count == 0 && i > 0) band.Add((xs[i - 1], pile[i - 1], pile[i - 1]));
                band.Add(edge);
            }
            else if (band.Count > 0)
            {
                band.Add(edge);
                bands.Add(band);
                band = [];
            }
        }

        if (band.Count > 0) bands.Add(band);
        return bands;
    }

    private static IEnumerable<List<ChartPoint>> Stretches(IEnumerable<ChartPoint> points)
    {
        List<ChartPoint> stretch = [];
        foreach (var point in points)
        {
            if (double.IsFinite(point.X) && double.IsFinite(point.Y))
            {
                stretch.Add(point);
                continue;
            }

            if (stretch.Count > 0) yield return stretch;
            stretch = [];
        }

        if (stretch.Count > 0) yield return stretch;
    }

    private void Cover(double y)
    {
        (Lowest, Highest) = (Math.Min(Lowest, y), Math.Max(Highest, y));
        IsEmpty = false;
    }
}
