using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>What the pointer does: it presses and drags widgets, or moves the picture.</summary>
public sealed partial class ScreenModel
{
    // A hand that shakes less than this meant a click [units].
    private const float ClickSlack = 4;

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
}
