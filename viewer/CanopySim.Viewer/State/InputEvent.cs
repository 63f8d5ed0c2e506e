namespace CanopySim.Viewer.State;

/// <summary>
/// What a person did, or what time did. Each carries its own position, so that none is lost where many are handled at
/// once.
/// </summary>
public abstract record InputEvent;

/// <summary>The pointer is at a place [px of the picture]; outside the window both are negative.</summary>
public sealed record PointerMove(float X, float Y) : InputEvent;

public sealed record PointerDown(
    float X, float Y, PointerButton Button = PointerButton.Main, KeyModifiers Modifiers = KeyModifiers.None)
        : InputEvent;

public sealed record PointerUp(float X, float Y, PointerButton Button = PointerButton.Main) : InputEvent;

/// <summary>The wheel at a place; one notch up is 1.</summary>
public sealed record Wheel(float X, float Y, float Notches) : InputEvent;

/// <summary>A key without a letter, at its press and at each repeat.</summary>
public sealed record KeyDown(ScreenKey Key, KeyModifiers Modifiers = KeyModifiers.None) : InputEvent;

/// <summary>What the keyboard wrote: letters, digits, signs and the space, whatever its layout.</summary>
public sealed record TextTyped(string Text) : InputEvent;

/// <summary>
/// The picture's size [px], and pixels for each of the screen's own units: 2 where the screen is twice as fine.
/// </summary>
public sealed record Resize(int Width, int Height, float PixelsPerUnit = 1) : InputEvent;

/// <summary>Time went by [s].</summary>
public sealed record Tick(double Seconds) : InputEvent;

/// <summary>The leaf that was found at the place of a <see cref="PickLeaf"/>; null: none.</summary>
public sealed record LeafPicked(int? LeafId) : InputEvent;

/// <summary>Share of a season that is still being computed, 0 to 1.</summary>
public sealed record SeasonProgress(double Share) : InputEvent;

public enum PointerButton
{
    Main,
    Middle,
    Second,
}

public enum ScreenKey
{
    Left,
    Right,
    Up,
    Down,
    Home,
    End,
    PageUp,
    PageDown,
    Enter,
    Escape,
    Tab,
    Backspace,
    Delete,
}

[Flags]
public enum KeyModifiers
{
    None = 0,
    Shift = 1,
    Control = 2,
}
