using System.Text.Json;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// The screen as JSON: the frame's number, what is chosen, and every widget with its place; for a test that drives a
/// real window.
/// </summary>
public static class ScreenReport
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower
    };

    public static string Json(ScreenModel model) => JsonSerializer.Serialize(
        new
        {
            model.Frame,
            Width = model.Size.Width,
            Height = model.Size.Height,
            Date = model.Facts.DayCount > 0 ? model.Facts.DateOf(model.State.Day) : (DateOnly?)null,
            model.State.Day,
            Days = model.Facts.DayCount,
            model.Recording.IsFinished,
            model.State.Hour,
            Quantity = model.State.Quantity.ToString(),
            Range = model.State.Range.ToString(),
            model.State.LeafId,
            Panel = model.State.Panel.ToString(),
            model.State.Chart,
            Theme = model.State.Theme.ToString(),
            Units = model.State.Units.ToString(),
            model.State.TextScale,
            Playing = model.State.Playing.ToString(),
            model.State.ShowsTrial,
            Trial = model.Trial.Status.Stage.ToString(),
            model.Focus,
            Picture = Rect(model.PictureArea),
            Widgets = model.Widgets.Select(widget => new
            {
                widget.Name,
                Rect = Rect(widget.Bounds),
                InSight = widget.Clip is not { } clip || clip.Contains(widget.Bounds),
                widget.Key,
                widget.Tip,
                widget.CanFocus,
            }),
        },
        Options);

    private static float[] Rect(SkiaSharp.SKRect rect) => [rect.Left, rect.Top, rect.Right, rect.Bottom];
}
