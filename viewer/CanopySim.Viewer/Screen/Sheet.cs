using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>A layout in the making: what is known of the screen, and the widgets so far, lowest first.</summary>
public sealed class Sheet(ScreenModel model)
{
    // Bars and a panel of some rows beside each other [units].
    private const float LeastHeightWithPanel = 540;

    public ScreenModel Model => model;

    public ViewState State => model.State;

    public float Scale => model.Scale;

    /// <summary>
    /// A panel was called on a screen that has no room for it: the answer, the colors' legend and the day's line make
    /// way until it is put away.
    /// </summary>
    public bool IsCramped => State.Panel != SidePanel.None && model.Size.Height < LeastHeightWithPanel * Scale;

    public List<Widget> Widgets { get; } = [];

    /// <summary>A length of the design in pixels.</summary>
    public float U(float units) => MathF.Round(units * Scale);

    public float LineHeight(TextKind kind = TextKind.Plain) => ScreenText.LineHeight(kind, Scale);

    public void Add(Widget widget) => Widgets.Add(widget);

    /// <summary>Lines of text in a box as wide as given; returns their lower end [px].</summary>
    public float AddText(string name, string text, float x, float y, float width, TextKind kind = TextKind.Plain,
        bool isQuiet = false)
    {
        var lines = ScreenText.Wrap(text, kind, Scale, width);
        var bottom = y + (lines.Count * LineHeight(kind));
        Add(new Label
        {
            Name = name,
            Bounds = new SKRect(x, y, x + width, bottom),
            Lines = lines,
            Kind = kind,
            IsQuiet = isQuiet
        });
        return bottom;
    }
}

/// <summary>Lays parts of a panel below each other.</summary>
public sealed class Column(Sheet sheet, float left, float top, float width)
{
    private const float ButtonHeight = 28;

    public float Left => left;

    public float Width => width;

    public float Y { get; private set; } = top;

    public void Gap(float units) => Y += sheet.U(units);

    /// <summary>A rectangle of the column's width, so many units high.</summary>
    public SKRect Take(float units) => TakePixels(sheet.U(units));

    public SKRect TakePixels(float height)
    {
        var rect = new SKRect(left, Y, left + width, Y + height);
        Y += height;
        return rect;
    }

    public void Text(string name, string text, TextKind kind = TextKind.Plain, bool isQuiet = false) =>
        Y = sheet.AddText(name, text, left, Y, width, kind, isQuiet);

    /// <summary>
    /// A row of cells: the first at the left and wrapped, the others ending at their columns' right edges.
    /// </summary>
    /// <param name="name">Name of the row; its cells are numbered.</param>
    /// <param name="cells">Their texts.</param>
    /// <param name="widths">Widths of all but the first [units].</param>
    /// <param name="isStrong">Whether it is a head.</param>
    public void Row(string name, IReadOnlyList<string> cells, IReadOnlyList<float> widths, bool isStrong = false)
    {
        var (kind, gap, line) = (isStrong ? TextKind.Strong : TextKind.Plain, sheet.U(8), sheet.LineHeight());
        var first = width - widths.Sum(cell => sheet.U(cell) + gap);
        var columns = cells.Select((cell, i) =>
            ScreenText.Wrap(cell, kind, sheet.Scale, i == 0 ? first : sheet.U(widths[i - 1]))).ToList();
        var height = columns.Max(lines => lines.Count) * line;
        var right = left + width;
        for (var i = cells.Count - 1; i > 0; i--)
        {
            var cell = sheet.U(widths[i - 1]);
            Add(i, new SKRect(right - cell, Y, right, Y + height), isRight: true);
            right -= cell + gap;
        }

        Add(0, new SKRect(left, Y, left + first, Y + height), isRight: false);
        Y += height;

        void Add(int i, SKRect box, bool isRight) => sheet.Add(new Label
        {
            Name = $"{name}.{i}",
            Bounds = box,
            Lines = columns[i],
            Kind = kind,
            IsRight = isRight,
            IsQuiet = isStrong || (i == 0 && !isStrong),
        });
    }

    /// <summary>A name and a value below each other's.</summary>
    public void Pair(string name, string what, string value)
    {
        var gap = sheet.U(10);
        var need = ScreenText.Width(value, TextKind.Plain, sheet.Scale);
        var valueWidth = Math.Min(need + 1, (0.6f * width) - gap);
        var (names, values) = (
            ScreenText.Wrap(what, TextKind.Plain, sheet.Scale, width - valueWidth - gap),
            ScreenText.Wrap(value, TextKind.Plain, sheet.Scale, valueWidth));
        var height = Math.Max(names.Count, values.Count) * sheet.LineHeight();
        sheet.Add(new Label
        {
            Name = $"{name}.name",
            Bounds = new SKRect(left, Y, left + width - valueWidth - gap, Y + height),
            Lines = names,
            IsQuiet = true,
        });
        sheet.Add(new Label
        {
            Name = $"{name}.value",
            Bounds = new SKRect(left + width - valueWidth, Y, left + width, Y + height),
            Lines = values,
            IsRight = true,
        });
        Y += height + sheet.U(1);
    }

    /// <summary>Buttons side by side, as wide as each other; below each other where a caption does not fit.</summary>
    public void Buttons(params IReadOnlyList<(string Name, string Caption, string Key, string Tip, bool IsOn,
        Action Act)> buttons)
    {
        var gap = sheet.U(6);
        var widest = buttons.Max(button => PushButton.WidthOf(button.Caption, sheet.Scale));
        var each = Math.Clamp((int)((width + gap) / (widest + gap)), 1, buttons.Count);
        if (each < buttons.Count && buttons.Count % each != 0
            && each > 1) each = (int)Math.Ceiling(buttons.Count / Math.Ceiling((double)buttons.Count / each));
        var cell = (width - (gap * (each - 1))) / each;
        for (var i = 0; i < buttons.Count; i++)
        {
            var (name, caption, key, tip, isOn, act) = buttons[i];
            var x = left + (i % each * (cell + gap));
            var y = Y + (i / each * (sheet.U(ButtonHeight) + gap));
            sheet.Add(new PushButton
            {
                Name = name,
                Bounds = new SKRect(x, y, x + cell, y + sheet.U(ButtonHeight)),
                Caption = caption,
                Key = key,
                Tip = tip,
                IsOn = isOn,
                Act = act,
            });
        }

        Y += ((((buttons.Count - 1) / each) + 1) * (sheet.U(ButtonHeight) + gap)) - gap;
    }

    public void Rule(string name)
    {
        Gap(10);
        sheet.Add(new Rule { Name = name, Bounds = new SKRect(left, Y, left + width, Y + 1) });
        Gap(10);
    }
}
