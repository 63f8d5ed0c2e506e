using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>What a widget does and its key, beside the pointer and inside the window.</summary>
internal static class Tooltip
{
    private const float Widest = 300;

    private const char NoBreak = '\u00A0';

    public static void Draw(Pen pen, Widget widget, SKPoint at, SKSizeI size)
    {
        var pad = pen.U(8);
        var text = widget.Key.Length > 0 ? $"{widget.Tip} ({widget.Key.Replace(' ', NoBreak)})" : widget.Tip;
        var lines = ScreenText.Wrap(text, TextKind.Plain, pen.Scale, Math.Min(pen.U(Widest), size.Width - (4 * pad)));
        var line = ScreenText.LineHeight(TextKind.Plain, pen.Scale);
        var width = lines.Max(part => ScreenText.Width(part, TextKind.Plain, pen.Scale)) + (2 * pad);
        var height = (lines.Count * line) + (2 * pad);
        var left = Math.Clamp(at.X + pad, 0, Math.Max(0, size.Width - width));
        var below = at.Y + pen.U(20);
        var top = below + height <= size.Height ? below : Math.Max(0, at.Y - pen.U(10) - height);
        var box = new SKRect(left, top, left + width, top + height);
        pen.Owner = "tooltip";
        pen.Fill(box, pen.Palette.Text, pen.U(4));
        for (var i = 0; i < lines.Count; i++)
        {
            var row = new SKRect(box.Left + pad, box.Top + pad + (i * line), box.Right, box.Top + pad
                + ((i + 1) * line));
            pen.TextIn(lines[i], row, TextKind.Plain, pen.Palette.Surface, pen.Palette.Text);
        }
    }
}
