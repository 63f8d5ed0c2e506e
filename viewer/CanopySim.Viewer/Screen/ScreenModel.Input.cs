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

    private const float ZoomStep = 1.15f;

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

    private void Rest(double seconds)
    {
        if (SecondsToTip is not { } left) return;
        _rested += seconds;
        if (seconds >= left) _needsPaint = true;
    }
}
