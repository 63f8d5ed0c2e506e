using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Views;
using CanopySim.Files.Charts;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// Where events go: to the widget that holds the pointer or the focus, to the keys of the whole screen, or to the
/// picture.
/// </summary>
public sealed partial class ScreenModel
{
    private const double SecondsOfRest = 0.6;

    // A hand that shakes less than this meant a click [units].
    private const float ClickSlack = 4;

    private const float OrbitStep = 24;

    private const float ZoomStep = 1.15f;

    private const int DaysOfPage = 10;

    private float _pixelsPerUnit = 1;
    private SKPoint? _pointer;
    private string? _hovered;
    private double _rested;
    private string? _held;
    private SKPoint? _pressedAt;
    private string? _focus;
    private bool _focusIsSeen;
    private (SKPoint From, SKPoint Last, bool IsPan, bool IsClick)? _pictureDrag;

    /// <summary>Name of the widget that keys go to.</summary>
    public string? Focus => _focus;

    /// <summary>Value on a chart's axis under the pointer.</summary>
    public double? ChartPointer { get; private set; }

    private double? SecondsToTip =>
        _held is null && _hovered is { } name && _rested < SecondsOfRest && Find(name) is { Tip.Length: > 0 }
            ? SecondsOfRest - _rested : null;

    private void Dispatch(InputEvent input)
    {
        switch (input)
        {
            case PointerMove move:
                Move(move.X, move.Y);
                break;
            case PointerDown down:
                Move(down.X, down.Y);
                Press(down);
                break;
            case PointerUp up:
                Move(up.X, up.Y);
                LetGo(up);
                break;
            case Wheel wheel:
                Turn(wheel);
                break;
            case KeyDown key:
                Press(key);
                break;
            case TextTyped typed:
                Type(typed.Text);
                break;
            case Resize size:
                (Size, _pixelsPerUnit) = (new SKSizeI(Math.Max(1, size.Width), Math.Max(1, size.Height)),
                    size.PixelsPerUnit);
                Change(State, PictureChange.Size);
                break;
            case Tick tick:
                Rest(tick.Seconds);
                Play(tick.Seconds);
                break;
            case LeafPicked picked:
                ChooseLeaf(picked.LeafId);
                break;
            case SeasonProgress progress:
                ComputedShare = Math.Clamp(progress.Share, 0, 1);
                Invalidate();
                break;
            default:
                throw new ArgumentException($"no such event: {input}");
        }
    }

    private void Move(float x, float y)
    {
        _pointer = x < 0 && y < 0 ? null : new SKPoint(x, y);
        if (_held is { } held)
        {
            // A press has gone to its place already; only a hand that moves drags.
            if (_pressedAt is { } from && SKPoint.Distance(from, new SKPoint(x, y)) < ClickSlack * Scale) return;
            _pressedAt = null;
            Find(held)?.Drag(x, y);
            return;
        }

        if (_pictureDrag is { } drag)
        {
            DragPicture(drag, new SKPoint(x, y));
            return;
        }

        var under = WidgetAt(x, y);
        if (under?.Name != _hovered)
        {
            (_hovered, _rested, _needsPaint) = (under?.Name, 0, true);
        }

        var at = (under as ChartView)?.ValueAt(x, y);
        if (at == ChartPointer) return;
        ChartPointer = at;
        Invalidate();
    }

    private void Press(PointerDown down)
    {
        (_rested, _focusIsSeen, _needsPaint) = (0, false, true);
        var under = WidgetAt(down.X, down.Y);
        if (under is null)
        {
            _focus = null;
            var isPan = down.Button != PointerButton.Main || (down.Modifiers & KeyModifiers.Shift) != 0;
            _pictureDrag = (new SKPoint(down.X, down.Y), new SKPoint(down.X, down.Y), isPan, !isPan);
            return;
        }

        if (down.Button != PointerButton.Main) return;

        // A button that was clicked must not take the space bar away from playing.
        _focus = under is PushButton || !under.CanFocus ? null : under.Name;
        if (under.TakesText) _focusIsSeen = true;
        (_held, _pressedAt) = (under.Name, new SKPoint(down.X, down.Y));
        under.Press(down.X, down.Y);
        Invalidate();
    }

    private void LetGo(PointerUp up)
    {
        if (_held is { } held)
        {
            _held = null;
            Find(held)?.Release(up.X, up.Y);
            Invalidate();
            Move(up.X, up.Y);
        }
        else if (_pictureDrag is { } drag)
        {
            _pictureDrag = null;
            if (drag.IsClick) _requests.Add(new PickLeaf(up.X, up.Y));
        }
    }

    private void DragPicture((SKPoint From, SKPoint Last, bool IsPan, bool IsClick) drag, SKPoint to)
    {
        if (drag.IsClick && SKPoint.Distance(drag.From, to) < ClickSlack * Scale) return;
        var (right, down) = (to.X - drag.Last.X, to.Y - drag.Last.Y);
        if (right != 0 || down != 0)
            _requests.Add(drag.IsPan ? new PanView(right, down) : new OrbitView(right / Scale, down / Scale));
        _pictureDrag = drag with { Last = to, IsClick = false };
    }

    private void Turn(Wheel wheel)
    {
        var layout = Layout();
        if (layout.PanelLeft <= wheel.X && wheel.Y > PictureArea.Top && wheel.Y < PictureArea.Bottom)
        {
            ScrollTo(Scroll - (wheel.Notches * 48 * Scale));
            return;
        }

        if (PictureArea.Contains(wheel.X, wheel.Y)) _requests.Add(new ZoomView(MathF.Pow(ZoomStep, wheel.Notches),
            wheel.X, wheel.Y));
        else if (WidgetAt(wheel.X, wheel.Y) is SeasonTrack) SetDay(State.Day + Math.Sign(wheel.Notches));
        else if (WidgetAt(wheel.X, wheel.Y) is HourTrack) SetHour(State.Hour + Math.Sign(wheel.Notches));
    }

    private void Rest(double seconds)
    {
        if (SecondsToTip is not { } left) return;
        _rested += seconds;
        if (seconds >= left) _needsPaint = true;
    }

    private void Press(KeyDown key)
    {
        if (key.Key == ScreenKey.Tab)
        {
            MoveFocus((key.Modifiers & KeyModifiers.Shift) != 0 ? -1 : 1);
            return;
        }

        if (key.Key == ScreenKey.Escape)
        {
            Escape();
            return;
        }

        if (_focus is { } name && Find(name)?.Take(key) == true)
        {
            _focusIsSeen = true;
            Invalidate();
            return;
        }

        if ((key.Modifiers & KeyModifiers.Control) != 0) MoveView(key);
        else MoveInTime(key);
    }

    private void MoveInTime(KeyDown key)
    {
        var isHour = (key.Modifiers & KeyModifiers.Shift) != 0;
        switch (key.Key)
        {
            case ScreenKey.Left when isHour:
                SetHour(State.Hour - 1);
                break;
            case ScreenKey.Right when isHour:
                SetHour(State.Hour + 1);
                break;
            case ScreenKey.Left:
                SetDay(State.Day - 1);
                break;
            case ScreenKey.Right:
                SetDay(State.Day + 1);
                break;
            case ScreenKey.PageUp:
                SetDay(State.Day - DaysOfPage);
                break;
            case ScreenKey.PageDown:
                SetDay(State.Day + DaysOfPage);
                break;
            case ScreenKey.Home:
                SetDay(0);
                break;
            case ScreenKey.End:
                SetDay(Facts.DayCount - 1);
                break;
            case ScreenKey.Up or ScreenKey.Down when State.Panel == SidePanel.Charts:
                var charts = ChartShelf.Offered.Select(chart => chart.Stem).ToList();
                var step = key.Key == ScreenKey.Up ? charts.Count - 1 : 1;
                SetChart(charts[(charts.IndexOf(State.Chart) + step) % charts.Count]);
                break;
            default:
                break;
        }
    }

    private void MoveView(KeyDown key)
    {
        var (right, down) = key.Key switch
        {
            ScreenKey.Left => (-OrbitStep, 0f),
            ScreenKey.Right => (OrbitStep, 0f),
            ScreenKey.Up => (0f, -OrbitStep),
            ScreenKey.Down => (0f, OrbitStep),
            _ => (0f, 0f),
        };
        if (right == 0 && down == 0) return;
        _requests.Add((key.Modifiers & KeyModifiers.Shift) != 0 ? new PanView(right * Scale, down * Scale)
            : new OrbitView(right, down));
    }

    private void Escape()
    {
        if (_focus is not null) (_focus, _focusIsSeen) = (null, false);
        if (State.Playing != Playing.Nothing) TogglePlaying(State.Playing);
        if (State.Panel != SidePanel.None) Toggle(State.Panel);
        else if (State.LeafId is not null) ChooseLeaf(null);
        Invalidate();
    }

    private void Type(string text)
    {
        if (_focus is { } name && (_focusIsSeen || Find(name)?.TakesText == true) && Find(name)?.Take(text) == true)
        {
            Invalidate();
            return;
        }

        foreach (var letter in text) Type(letter);
    }

    private void Type(char letter)
    {
        var middle = new SKPoint(PictureArea.MidX, PictureArea.MidY);
        switch (char.ToLowerInvariant(letter))
        {
            case >= '1' and <= '9':
                SetQuantity((LeafQuantity)(letter - '1'));
                break;
            case ' ':
                TogglePlaying(Playing.Season);
                break;
            case 'd':
                TogglePlaying(Playing.Day);
                break;
            case 'r':
                SetRange(State.Range == RangeMode.Fixed ? RangeMode.Fitted : RangeMode.Fixed);
                break;
            case 'n':
                StepLeaf(1);
                break;
            case 'b':
                StepLeaf(-1);
                break;
            case 's':
                ShowTrial(!State.ShowsTrial);
                break;
            case 'i':
                _requests.Add(new ZoomView(ZoomStep, middle.X, middle.Y));
                break;
            case 'o':
                _requests.Add(new ZoomView(1 / ZoomStep, middle.X, middle.Y));
                break;
            case 'v':
                _requests.Add(new WholeVine());
                break;
            case 'w':
                Look(ViewPoint.Along);
                break;
            case 'x':
                Look(ViewPoint.Across);
                break;
            case 'q':
                Look(ViewPoint.Sun);
                break;
            case 'z':
                Look(ViewPoint.Above);
                break;
            case 't':
                SetTheme(State.Theme == ScreenTheme.Light ? ScreenTheme.Dark : ScreenTheme.Light);
                break;
            case 'u':
                SetUnits(State.Units == Units.Metric ? Units.Us : Units.Metric);
                break;
            case '+' or '=':
                ScaleText(1);
                break;
            case '-' or '−':
                ScaleText(-1);
                break;
            default:
                foreach (var (panel, _, key, _) in TopBar.Panels)
                    if (char.ToUpperInvariant(letter) == key[0]) Toggle(panel);
                break;
        }
    }

    private void MoveFocus(int step)
    {
        var order = Layout().Widgets.Where(widget => widget.CanFocus).ToList();
        if (order.Count == 0) return;
        var now = order.FindIndex(widget => widget.Name == _focus);
        var next = order[now < 0 ? (step > 0 ? 0 : order.Count - 1) : (now + step + order.Count) % order.Count];
        (_focus, _focusIsSeen) = (next.Name, true);
        if (next.Clip is { } clip)
        {
            if (next.Bounds.Bottom > clip.Bottom) ScrollTo(Scroll + next.Bounds.Bottom - clip.Bottom + (8 * Scale));
            else if (next.Bounds.Top < clip.Top) ScrollTo(Scroll - (clip.Top - next.Bounds.Top) - (8 * Scale));
        }

        Invalidate();
    }
}
