using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>
/// The panel that comes in from the right: its title, the button that puts it away, and what is called.
/// </summary>
internal static class PanelFrame
{
    private const float PanelWidth = 430;

    private const float LargestShare = 0.62f;

    /// <summary>Width that a panel takes of the window [px].</summary>
    public static float WidthIn(Sheet sheet, float width) =>
        MathF.Round(Math.Min(sheet.U(PanelWidth), width * LargestShare));

    /// <summary>
    /// Adds the open panel between top and bottom; returns its left edge, and how far its content can be scrolled [px].
    /// </summary>
    public static (float Left, float Scrollable) Add(Sheet sheet, float width, float top, float bottom)
    {
        if (sheet.State.Panel == SidePanel.None) return (width, 0);
        var left = width - WidthIn(sheet, width);
        sheet.Add(new Backdrop
        {
            Name = "panel",
            Bounds = new SKRect(left, top, width, bottom),
            Seam = new SKRect(left, top, left + 1, bottom),
        });
        var pad = sheet.U(16);
        var head = top + sheet.U(10);
        var away = PushButton.WidthOf("Put away", sheet.Scale);
        sheet.Add(new PushButton
        {
            Name = "panel.away",
            Bounds = new SKRect(width - pad - away, head, width - pad, head + sheet.U(26)),
            Caption = "Put away",
            Key = "Escape",
            Tip = "Put the panel away",
            Act = () => sheet.Model.Toggle(sheet.State.Panel),
        });
        var title = new SKRect(left + pad, head, width - (2 * pad) - away, head + sheet.U(26));
        sheet.Add(new Label
        {
            Name = "panel.title",
            Bounds = title,
            Kind = TextKind.Heading,
            Lines = [ScreenText.Fit(TitleOf(sheet.State.Panel), TextKind.Heading, sheet.Scale, title.Width)],
        });
        var content = new SKRect(left + 1, head + sheet.U(34), width, bottom - 1);
        var first = sheet.Widgets.Count;
        var column = new Column(sheet, left + pad, content.Top - sheet.Model.Scroll, width - left - (2 * pad));
        AddContent(sheet, column);
        column.Gap(10);
        var height = column.Y + sheet.Model.Scroll - content.Top;
        for (var i = first; i < sheet.Widgets.Count; i++) sheet.Widgets[i].Clip = content;
        var scrollable = Math.Max(0, height - content.Height);
        if (scrollable > 0)
        {
            var share = content.Height / height;
            var grip = content.Top + (sheet.Model.Scroll / height * content.Height);
            sheet.Add(new ScrollMark
            {
                Name = "panel.scroll",
                Bounds = new SKRect(width - sheet.U(6), grip, width - sheet.U(2), grip + (share * content.Height)),
            });
        }

        return (left, scrollable);
    }

    private static string TitleOf(SidePanel panel) => panel switch
    {
        SidePanel.Colors => "Color the leaves by",
        SidePanel.Leaf => "One leaf",
        SidePanel.Charts => "The season in charts",
        SidePanel.Trial => "Try it on this block",
        _ => "Keys, text and units",
    };

    private static void AddContent(Sheet sheet, Column column)
    {
        switch (sheet.State.Panel)
        {
            case SidePanel.Colors:
                ColorsPanel.Add(sheet, column);
                break;
            case SidePanel.Leaf:
                LeafPanel.Add(sheet, column);
                break;
            case SidePanel.Charts:
                ChartsPanel.Add(sheet, column);
                break;
            case SidePanel.Trial:
                TrialPanel.Add(sheet, column);
                break;
            default:
                HelpPanel.Add(sheet, column);
                break;
        }
    }
}

/// <summary>How much of a panel is in sight.</summary>
public sealed class ScrollMark : Widget
{
    public override bool TakesPointer => false;

    public override void Draw(Pen pen, WidgetLook look) => pen.Fill(Bounds, pen.Palette.Line, pen.U(2));
}
