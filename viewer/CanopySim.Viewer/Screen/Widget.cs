using CanopySim.Viewer.State;
using SkiaSharp;

namespace CanopySim.Viewer.Screen;

/// <summary>How a widget stands when it is drawn.</summary>
/// <param name="IsHovered">The pointer is over it.</param>
/// <param name="IsHeld">The pointer was pressed on it and is not let go.</param>
/// <param name="IsFocused">Keys go to it, and the reader should see so.</param>
/// <param name="Pointer">Where the pointer is [px]; null outside it.</param>
public readonly record struct WidgetLook(bool IsHovered, bool IsHeld, bool IsFocused, SKPoint? Pointer);

/// <summary>
/// A piece of the screen: its rectangle, name, what it does and by which key. Widgets are made anew for each state of
/// the screen and know
/// nothing of the last; what lasts is in the model, by their names.
/// </summary>
public abstract class Widget
{
    public required string Name { get; init; }

    public required SKRect Bounds { get; init; }

    /// <summary>What it does, shown when the pointer rests on it.</summary>
    public string Tip { get; init; } = "";

    /// <summary>The key that does the same; empty where there is none.</summary>
    public string Key { get; init; } = "";

    /// <summary>What may be seen of it: panels scroll.</summary>
    public SKRect? Clip { get; set; }

    public virtual bool CanFocus => false;

    /// <summary>False for what only shows: the pointer goes through it.</summary>
    public virtual bool TakesPointer => true;

    /// <summary>Whether what the keyboard writes goes into it.</summary>
    public virtual bool TakesText => false;

    public abstract void Draw(Pen pen, WidgetLook look);

    public virtual void Press(float x, float y)
    {
    }

    public virtual void Drag(float x, float y)
    {
    }

    /// <summary>The pointer was let go, over the widget or not.</summary>
    public virtual void Release(float x, float y)
    {
    }

    /// <summary>True where the key was taken.</summary>
    public virtual bool Take(KeyDown key) => false;

    /// <summary>True where the text was taken.</summary>
    public virtual bool Take(string text) => false;

    public bool Contains(float x, float y) => Bounds.Contains(x, y) && (Clip is not { } clip || clip.Contains(x, y));

    protected static void DrawFocus(Pen pen, SKRect bounds, WidgetLook look)
    {
        if (!look.IsFocused) return;
        var ring = bounds;
        ring.Inflate(pen.U(2), pen.U(2));
        pen.Stroke(ring, pen.Palette.Accent, pen.U(2), pen.U(5));
    }
}
