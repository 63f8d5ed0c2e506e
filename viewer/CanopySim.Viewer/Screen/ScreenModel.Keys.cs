using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Views;
using CanopySim.Files.Charts;
using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>What keys do: those of the focused widget first, then those of the whole screen.</summary>
public sealed partial class ScreenModel
{
    private const float OrbitStep = 24;

    private const int DaysOfPage = 10;

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
