using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>Lays the widgets out and draws them.</summary>
public sealed partial class ScreenModel
{
    private ScreenLayout? _layout;

    /// <summary>How far the panel is scrolled down [px].</summary>
    public float Scroll { get; private set; }

    /// <summary>Pictures of the screen that were drawn.</summary>
    public int Frame { get; private set; }

    /// <summary>What bars and panels leave to the canopy [px].</summary>
    public SKRect PictureArea => Layout().Picture;

    /// <summary>
    /// The widgets as they stand, lowest first; those that take the focus in the order in which they get it.
    /// </summary>
    public IReadOnlyList<Widget> Widgets => Layout().Widgets;

    /// <summary>Texts of the last picture.</summary>
    public IReadOnlyList<DrawnText> Texts { get; private set; } = [];

    /// <summary>The widget of a name; null where it is not on the screen.</summary>
    public Widget? Find(string name) => Layout().Widgets.FirstOrDefault(widget => widget.Name == name);

    /// <summary>Draws what lies over the canopy; where the canopy shows through, the canvas becomes clear.</summary>
    public void Draw(SKCanvas canvas)
    {
        canvas.Clear(SKColors.Transparent);
        var pen = new Pen(canvas, ScreenPalette.Of(State.Theme), Scale);
        foreach (var widget in Layout().Widgets)
        {
            if (widget.Clip is { } clip)
            {
                if (!clip.IntersectsWith(widget.Bounds)) continue;
                canvas.Save();
                canvas.ClipRect(clip);
            }

            pen.Owner = widget.Name;
            widget.Draw(pen, LookOf(widget));
            if (widget.Clip is not null) canvas.Restore();
        }

        if (_rested >= SecondsOfRest && _held is null && _hovered is { } name
            && Find(name) is { Tip.Length: > 0 } hovered && _pointer is { } at)
            Tooltip.Draw(pen, hovered, at, Size);
        Texts = pen.Texts;
        Frame++;
        _needsPaint = false;
    }

    private WidgetLook LookOf(Widget widget) => new(
        widget.Name == _hovered, widget.Name == _held, widget.Name == _focus && (_focusIsSeen || widget.TakesText),
        _pointer is { } at && widget.Contains(at.X, at.Y) ? at : null);

    private ScreenLayout Layout()
    {
        if (_layout is not null) return _layout;
        _layout = ScreenLayout.Of(this);
        if (Scroll <= _layout.Scrollable) return _layout;
        Scroll = _layout.Scrollable;
        return _layout = ScreenLayout.Of(this);
    }

    private Widget? WidgetAt(float x, float y) =>
        Layout().Widgets.LastOrDefault(widget => widget.TakesPointer && widget.Contains(x, y));

    private void ScrollTo(float scroll)
    {
        var to = Math.Clamp(scroll, 0, Layout().Scrollable);
        if (to == Scroll) return;
        Scroll = to;
        Invalidate();
    }

    private void Invalidate() => (_layout, _needsPaint) = (null, true);
}

/// <summary>Where everything on the screen is.</summary>
/// <param name="Widgets">Lowest first.</param>
/// <param name="Picture">What is left to the canopy [px].</param>
/// <param name="PanelLeft">Left edge of the open panel, the screen's right edge without one [px].</param>
/// <param name="Scrollable">How far the panel can be scrolled [px].</param>
public sealed record ScreenLayout(IReadOnlyList<Widget> Widgets, SKRect Picture, float PanelLeft, float Scrollable)
{
    public static ScreenLayout Of(ScreenModel model)
    {
        var (width, height) = (model.Size.Width, model.Size.Height);
        var strip = new Sheet(model);
        var bottom = TimeStrip.Add(strip, width, height);
        var sheet = new Sheet(model);
        var top = TopBar.Add(sheet, width);
        var (left, scrollable) = PanelFrame.Add(sheet, width, top, bottom);
        return new ScreenLayout([.. sheet.Widgets, .. strip.Widgets], new SKRect(0, top, left, Math.Max(top, bottom)),
            left, scrollable);
    }
}
