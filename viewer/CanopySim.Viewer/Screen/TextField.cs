using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Screen;

/// <summary>A line of text that the reader writes. The caret stands at its end.</summary>
public sealed class TextField : Widget
{
    private const int Longest = 120;

    public required string Value { get; init; }

    public required Action<string> Set { get; init; }

    /// <summary>On Enter.</summary>
    public required Action Accept { get; init; }

    public override bool CanFocus => true;

    public override bool TakesText => true;

    public override void Draw(Pen pen, WidgetLook look)
    {
        pen.Fill(Bounds, pen.Palette.Raised, pen.U(4));
        var room = Bounds.Width - pen.U(20);
        var shown = Value;

        // The end is what is being written: what does not fit goes out at the left.
        while (shown.Length > 0 && ScreenText.Width(shown, TextKind.Plain, pen.Scale) > room) shown = shown[1..];
        pen.TextIn(shown, Bounds, TextKind.Plain, pen.Palette.Text, pen.Palette.Raised, pen.U(10));
        if (look.IsFocused)
        {
            var x = Bounds.Left + pen.U(11) + ScreenText.Width(shown, TextKind.Plain, pen.Scale);
            pen.Line(x, Bounds.Top + pen.U(6), x, Bounds.Bottom - pen.U(6), pen.Palette.Accent, pen.U(1.5f));
        }

        DrawFocus(pen, Bounds, look);
    }

    public override bool Take(KeyDown key)
    {
        switch (key.Key)
        {
            case ScreenKey.Backspace:
                if (Value.Length > 0) Set(Value[..^1]);
                return true;
            case ScreenKey.Delete:
                Set("");
                return true;
            case ScreenKey.Enter:
                Accept();
                return true;
            default:
                return false;
        }
    }

    public override bool Take(string text)
    {
        Set(string.Concat((Value + text).Where(letter => !char.IsControl(letter)).Take(Longest)));
        return true;
    }
}
