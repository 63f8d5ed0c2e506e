using System.Globalization;
using CanopySim.Files.Charts;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// The season's line: the leaf area of its days as a silhouette, stages as named lines, months below, the day in sight.
/// Dragging goes to the day
/// under the pointer; a click near a stage goes to the stage.
/// </summary>
public sealed class SeasonTrack : Widget
{
    /// <summary>Height in the design's units: stages, silhouette, months.</summary>
    public const float Height = 62;

    private const float StageBand = 18;

    private const float MonthBand = 17;

    public required IReadOnlyList<DateOnly> Dates { get; init; }

    /// <summary>Leaf area of each day [m² per vine].</summary>
    public required IReadOnlyList<double> LeafAreas { get; init; }

    public required IReadOnlyList<StageMark> Stages { get; init; }

    /// <summary>Days that the line spans: those there, and those still to come.</summary>
    public required int Span { get; init; }

    public required int Day { get; init; }

    public required float Scale { get; init; }

    public required Action<int> Set { get; init; }

    public override bool CanFocus => true;

    private float TrackTop => Bounds.Top + (StageBand * Scale);

    private float TrackBottom => Bounds.Bottom - (MonthBand * Scale);

    /// <summary>Place of the middle of a day [px].</summary>
    public float PixelOf(double day) => (float)(Bounds.Left + ((day + 0.5) / Math.Max(1, Span) * Bounds.Width));

    /// <summary>Where the name of a stage stands.</summary>
    public IReadOnlyList<(StageMark Stage, SKRect Box, float LineX)> PlaceStages()
    {
        List<(StageMark, SKRect, float)> placed = [];
        var free = Bounds.Left;
        foreach (var stage in Dates.Count == 0 ? [] : Stages)
        {
            var x = PixelOf(stage.Date.DayNumber - Dates[0].DayNumber);
            var text = NameOf(stage);
            var width = ScreenText.Width(text, TextKind.Plain, Scale);
            if (Math.Max(free, x - (width / 2)) + width > Bounds.Right && width > 0.12f * Bounds.Width) (text,
                width) = (stage.Name, ScreenText.Width(stage.Name, TextKind.Plain, Scale));
            var left = Math.Min(Math.Max(free, x - (width / 2)), Bounds.Right - width);
            if (left < free) left = free;
            if (left + width > Bounds.Right) continue;
            placed.Add((stage, new SKRect(left, Bounds.Top, left + width + (1 * Scale), TrackTop), x));
            free = left + width + (10 * Scale);
        }

        return placed;
    }

    public override void Draw(Pen pen, WidgetLook look)
    {
        var palette = pen.Palette;
        var there = new SKRect(Bounds.Left, TrackTop, Bounds.Left + (Bounds.Width * Dates.Count / Math.Max(1, Span)),
            TrackBottom);
        pen.Fill(new SKRect(Bounds.Left, TrackTop, Bounds.Right, TrackBottom), palette.Raised, pen.U(3));
        if (Dates.Count < Span) pen.Fill(there, palette.Pressed, pen.U(3));
        DrawSilhouette(pen);
        DrawMonths(pen);
        foreach (var (stage, box, x) in PlaceStages())
        {
            pen.Line(x, Bounds.Top + (StageBand * Scale) - pen.U(1), x, TrackBottom, palette.Line, pen.U(1));
            var text = ScreenText.Width(NameOf(stage), TextKind.Plain, Scale) <= box.Width ? NameOf(stage) : stage.Name;
            pen.TextIn(text, box, TextKind.Plain, palette.Text, palette.Surface);
        }

        if (Dates.Count > 0) DrawHandle(pen, PixelOf(Day), TrackTop, TrackBottom, look);
        DrawFocus(pen, new SKRect(Bounds.Left, TrackTop, Bounds.Right, TrackBottom), look);
    }

    public override void Press(float x, float y)
    {
        if (StageUnder(x, y) is { } stage) Set(stage.Date.DayNumber - Dates[0].DayNumber);
        else Drag(x, y);
    }

    public override void Drag(float x, float y)
    {
        if (Dates.Count == 0) return;
        var day = (int)Math.Floor((x - Bounds.Left) / Bounds.Width * Span);
        Set(Math.Clamp(day, 0, Dates.Count - 1));
    }

    /// <summary>The grip of a line in time, the same on both.</summary>
    internal static void DrawHandle(Pen pen, float x, float top, float bottom, WidgetLook look)
    {
        pen.Fill(new SKRect(x - pen.U(1), top - pen.U(3), x + pen.U(1), bottom + pen.U(2)), pen.Palette.Accent);
        pen.Disc(x, bottom + pen.U(1), pen.U(look.IsHovered || look.IsHeld ? 6.5f : 5.5f), pen.Palette.Accent);
    }

    private static string NameOf(StageMark stage) => $"{stage.Name} {ChartAxis.DayText(stage.Date, isShort: true)}";

    private StageMark? StageUnder(float x, float y)
    {
        if (y > TrackTop) return null;
        foreach (var (stage, box, _) in PlaceStages())
            if (x >= box.Left && x <= box.Right) return stage;
        return null;
    }

    private void DrawSilhouette(Pen pen)
    {
        var most = LeafAreas.Count > 0 ? LeafAreas.Max() : 0;
        if (most <= 0) return;
        using var builder = new SKPathBuilder();
        builder.MoveTo(PixelOf(0), TrackBottom);
        for (var day = 0; day < LeafAreas.Count; day++)
            builder.LineTo(PixelOf(day),
                TrackBottom - ((float)(LeafAreas[day] / most) * 0.9f * (TrackBottom - TrackTop)));
        builder.LineTo(PixelOf(LeafAreas.Count - 1), TrackBottom);
        builder.Close();
        using var path = builder.Detach();
        pen.Fill(path, pen.Palette.Silhouette);
    }

    private void DrawMonths(Pen pen)
    {
        if (Dates.Count == 0) return;
        var first = Dates[0];
        var month = first.Day == 1 ? first : new DateOnly(first.Year, first.Month, 1).AddMonths(1);
        for (; month.DayNumber - first.DayNumber < Span; month = month.AddMonths(1))
        {
            var from = PixelOf(month.DayNumber - first.DayNumber - 0.5);
            var to = Math.Min(Bounds.Right, PixelOf(month.AddMonths(1).DayNumber - first.DayNumber - 0.5));
            pen.Line(from, TrackBottom, from, TrackBottom + pen.U(4), pen.Palette.Line, pen.U(1));
            var box = new SKRect(from + pen.U(4), TrackBottom + pen.U(3), to, Bounds.Bottom);
            foreach (var format in (string[])["MMMM", "MMM"])
            {
                var text = month.ToString(format, CultureInfo.InvariantCulture);
                if (ScreenText.Width(text, TextKind.Plain, Scale) > box.Width) continue;
                pen.TextIn(text, box, TextKind.Plain, pen.Palette.Quiet, pen.Palette.Surface);
                break;
            }
        }
    }
}
