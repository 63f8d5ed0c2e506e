using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>A plain surface that keeps the pointer from what lies under it.</summary>
public sealed class Backdrop : Widget
{
    /// <summary>Edge at which a seam is drawn.</summary>
    public required SKRect Seam { get; init; }

    public override void Draw(Pen pen, WidgetLook look)
    {
        pen.Fill(Bounds, pen.Palette.Surface);
        pen.Fill(Seam, pen.Palette.Seam);
    }
}

/// <summary>Lines of text.</summary>
public sealed class Label : Widget
{
    public required IReadOnlyList<string> Lines { get; init; }

    public TextKind Kind { get; init; }

    public bool IsQuiet { get; init; }

    /// <summary>Ends at the right edge, as numbers in a column do.</summary>
    public bool IsRight { get; init; }

    public override bool TakesPointer => Tip.Length > 0;

    public override void Draw(Pen pen, WidgetLook look)
    {
        var line = ScreenText.LineHeight(Kind, pen.Scale);
        var top = Bounds.Top;
        foreach (var text in Lines)
        {
            var x = IsRight ? Bounds.Right - ScreenText.Width(text, Kind, pen.Scale) : Bounds.Left;
            var (above, below) = ScreenText.Extent(Kind, pen.Scale);
            pen.Text(
                text, x, top + ((line + above - below) / 2), Kind, IsQuiet ? pen.Palette.Quiet : pen.Palette.Text,
                    pen.Palette.Surface, Bounds);
            top += line;
        }
    }
}

/// <summary>A button: pressed by the pointer, or by Enter or the space bar when it has the focus.</summary>
public sealed class PushButton : Widget
{
    public required string Caption { get; init; }

    public required Action Act { get; init; }

    /// <summary>The chosen one of several, or switched on.</summary>
    public bool IsOn { get; init; }

    public bool IsEnabled { get; init; } = true;

    /// <summary>The key, written at the right end.</summary>
    public bool ShowsKey { get; init; }

    public bool IsLeft { get; init; }

    public SymbolKind Symbol { get; init; }

    public override bool CanFocus => IsEnabled;

    public override void Draw(Pen pen, WidgetLook look)
    {
        var palette = pen.Palette;
        var under = IsOn ? palette.Accent : look.IsHovered && IsEnabled ? palette.Pressed : palette.Raised;
        var text = IsOn ? palette.OnAccent : IsEnabled ? palette.Accent : palette.Quiet;
        pen.Fill(Bounds, under, pen.U(4));
        var box = Bounds;
        if (Symbol != SymbolKind.None)
        {
            Symbols.Draw(pen, Symbol, new SKRect(box.Left + pen.U(9), box.MidY - pen.U(6), box.Left + pen.U(21),
                box.MidY + pen.U(6)), text);
            box.Left += pen.U(20);
        }

        var kind = IsOn ? TextKind.Strong : TextKind.Plain;
        pen.TextIn(Caption, box, kind, text, under, pen.U(10), !IsLeft && Symbol == SymbolKind.None);
        if (ShowsKey && Key.Length > 0)
        {
            var width = ScreenText.Width(Key, TextKind.Plain, pen.Scale) + pen.U(10);
            pen.TextIn(Key, new SKRect(box.Right - width, box.Top, box.Right, box.Bottom), TextKind.Plain, IsOn
                ? palette.OnAccent : palette.Quiet, under);
        }

        DrawFocus(pen, Bounds, look);
    }

    public override void Release(float x, float y)
    {
        if (IsEnabled && Contains(x, y)) Act();
    }

    public override bool Take(KeyDown key)
    {
        if (key.Key != ScreenKey.Enter || !IsEnabled) return false;
        Act();
        return true;
    }

    public override bool Take(string text)
    {
        if (text != " " || !IsEnabled) return false;
        Act();
        return true;
    }

    /// <summary>Width that the caption takes [px].</summary>
    public static float WidthOf(string caption, float scale, bool hasSymbol = false) =>
        MathF.Ceiling(ScreenText.Width(caption, TextKind.Strong, scale) + ((hasSymbol ? 42 : 22) * scale));
}

/// <summary>How much of something is done.</summary>
public sealed class ShareBar : Widget
{
    public required double Share { get; init; }

    public override bool TakesPointer => false;

    public override void Draw(Pen pen, WidgetLook look)
    {
        pen.Fill(Bounds, pen.Palette.Raised, pen.U(3));
        var done = Bounds;
        done.Right = done.Left + ((float)Math.Clamp(Share, 0, 1) * Bounds.Width);
        if (done.Width > pen.U(3)) pen.Fill(done, pen.Palette.Accent, pen.U(3));
    }
}

/// <summary>A line between parts of a panel.</summary>
public sealed class Rule : Widget
{
    public override bool TakesPointer => false;

    public override void Draw(Pen pen, WidgetLook look) => pen.Fill(Bounds, pen.Palette.Seam);
}

public enum SymbolKind
{
    None,
    Play,
    Pause,
}

/// <summary>The few signs that stand for words.</summary>
public static class Symbols
{
    public static void Draw(Pen pen, SymbolKind symbol, SKRect box, uint rgb)
    {
        switch (symbol)
        {
            case SymbolKind.Play:
                using (var builder = new SKPathBuilder())
                {
                    builder.MoveTo(box.Left + (0.1f * box.Width), box.Top);
                    builder.LineTo(box.Right, box.MidY);
                    builder.LineTo(box.Left + (0.1f * box.Width), box.Bottom);
                    builder.Close();
                    using var path = builder.Detach();
                    pen.Fill(path, rgb);
                }

                break;
            case SymbolKind.Pause:
                pen.Fill(new SKRect(box.Left + (0.1f * box.Width), box.Top, box.Left + (0.38f * box.Width), box.Bottom),
                    rgb);
                pen.Fill(new SKRect(box.Left + (0.62f * box.Width), box.Top, box.Left + (0.9f * box.Width), box.Bottom),
                    rgb);
                break;
            default:
                break;
        }
    }
}
