using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>The answer that the reader came for, and the panels that can be called.</summary>
internal static class TopBar
{
    private const int MostLines = 2;

    /// <summary>The panels with their names, keys and what they are for.</summary>
    public static IReadOnlyList<(SidePanel Panel, string Caption, string Key, string Tip)> Panels { get; } =
    [
        (SidePanel.Colors, "Colors", "C", "Choose what the leaves are colored by"),
        (SidePanel.Leaf, "Leaf", "L", "One leaf: what it is, does and gave"),
        (SidePanel.Charts, "Charts", "A", "The season in charts"),
        (SidePanel.Trial, "Try it", "Y", "Change the block and see what comes of it"),
        (SidePanel.Help, "Help", "?", "Keys, size of text, units, light or dark"),
    ];

    /// <summary>Adds the bar; returns its lower end [px].</summary>
    public static float Add(Sheet sheet, float width)
    {
        var (pad, height, gap) = (sheet.U(12), sheet.U(28), sheet.U(6));
        var widths = Panels.Select(panel => PushButton.WidthOf(panel.Caption, sheet.Scale)).ToList();
        var buttons = widths.Sum() + (gap * (widths.Count - 1));
        var answers = sheet.Model.Facts.Answers(sheet.State.Units);
        var beside = width - buttons - (4 * pad);
        var text = Choose(answers, beside, 1, sheet.Scale);
        var isBeside = text is not null;
        if (!sheet.IsCramped) text ??= Choose(answers, beside, MostLines, sheet.Scale);
        isBeside = isBeside || (text is not null && beside > sheet.U(300));
        if (!isBeside && !sheet.IsCramped) text = Choose(answers, width - (2 * pad), 1, sheet.Scale) ?? Choose(answers,
            width - (2 * pad), MostLines, sheet.Scale) ?? answers[^1];

        IReadOnlyList<string> lines = text is null ? []
            : ScreenText.Wrap(text, TextKind.Heading, sheet.Scale, isBeside ? beside : width - (2 * pad));
        var textHeight = lines.Count * sheet.LineHeight(TextKind.Heading);
        var row = isBeside ? Math.Max(height, textHeight) : height;
        var bottom = sheet.U(8) + row + sheet.U(8) + (isBeside || lines.Count == 0 ? 0 : textHeight + sheet.U(4));
        sheet.Add(new Backdrop
        {
            Name = "top",
            Bounds = new SKRect(0, 0, width, bottom),
            Seam = new SKRect(0, bottom - 1, width, bottom),
        });
        var x = width - pad - buttons;
        for (var i = 0; i < Panels.Count; i++)
        {
            var (panel, caption, key, tip) = Panels[i];
            var top = isBeside ? sheet.U(8) + ((row - height) / 2) : sheet.U(8);
            sheet.Add(new PushButton
            {
                Name = $"panel.{panel.ToString().ToLowerInvariant()}",
                Bounds = new SKRect(x, top, x + widths[i], top + height),
                Caption = caption,
                Key = key,
                Tip = tip,
                IsOn = sheet.State.Panel == panel,
                Act = () => sheet.Model.Toggle(panel),
            });
            x += widths[i] + gap;
        }

        var textTop = isBeside ? sheet.U(8) + ((row - textHeight) / 2) : sheet.U(8) + height + sheet.U(4);
        if (text is not null) sheet.AddText("answer", text, pad, textTop, isBeside ? beside : width - (2 * pad),
            TextKind.Heading);
        return bottom;
    }

    // The fullest sentence that fits into so many lines.
    private static string? Choose(IReadOnlyList<string> answers, float width, int lines, float scale) =>
        width < 100 ? null : answers.FirstOrDefault(answer =>
            ScreenText.Wrap(answer, TextKind.Heading, scale, width).Count <= lines);
}
