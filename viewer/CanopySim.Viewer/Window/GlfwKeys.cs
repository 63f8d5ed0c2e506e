using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Window;

/// <summary>Keys without a letter, by GLFW's numbers.</summary>
internal static class GlfwKeys
{
    public static ScreenKey? Of(int key) => key switch
    {
        256 => ScreenKey.Escape,
        257 or 335 => ScreenKey.Enter,
        258 => ScreenKey.Tab,
        259 => ScreenKey.Backspace,
        261 => ScreenKey.Delete,
        262 => ScreenKey.Right,
        263 => ScreenKey.Left,
        264 => ScreenKey.Down,
        265 => ScreenKey.Up,
        266 => ScreenKey.PageUp,
        267 => ScreenKey.PageDown,
        268 => ScreenKey.Home,
        269 => ScreenKey.End,
        _ => null,
    };

    /// <summary>Ctrl+Q.</summary>
    public static bool Closes(int key, int modifiers) => key == 'Q' && (modifiers & Glfw.ModControl) != 0;

    public static KeyModifiers Modifiers(int bits) =>
        ((bits & Glfw.ModShift) != 0 ? KeyModifiers.Shift : KeyModifiers.None)
        | ((bits & Glfw.ModControl) != 0 ? KeyModifiers.Control : KeyModifiers.None);
}
