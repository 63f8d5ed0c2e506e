namespace CanopySim.Viewer.Window;

/// <summary>What to tell who cannot have a window, and what goes without one.</summary>
internal static class WindowHelp
{
    private const string WithoutWindow =
        "Without a window: canopysim-view … --picture FILE.png draws the same picture into a file.";

    public static string NoLibrary =>
        "a window needs the library GLFW 3.3, which was not found; install it: "
        + (OperatingSystem.IsWindows() ? "put glfw3.dll beside the program. "
            : OperatingSystem.IsMacOS() ? "brew install glfw. "
            : "apt-get install libglfw3 (Debian, Ubuntu), or glfw of your system. ")
        + WithoutWindow;

    public static string NoDisplay(string why) =>
        $"a window needs a display, and none was found ({why}). {WithoutWindow}";

    public static string NoContext(string why) =>
        $"a window needs OpenGL 3.3, which this display does not give ({why}); install a driver for it, on Debian "
        + $"libgl1-mesa-dri. {WithoutWindow}";
}
