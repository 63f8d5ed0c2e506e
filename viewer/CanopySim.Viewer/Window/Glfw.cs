using System.Reflection;
using System.Runtime.InteropServices;

namespace CanopySim.Viewer.Window;

/// <summary>
/// The part of GLFW 3.3 that a window needs: names, numbers and meanings as its header has them. The one file that
/// knows the library; where a package for windows is to be had it can take its place behind <see cref="IWindow"/>.
/// </summary>
internal static unsafe partial class Glfw
{
    public const int ContextVersionMajor = 0x00022002;
    public const int ContextVersionMinor = 0x00022003;
    public const int OpenGlForwardCompatible = 0x00022006;
    public const int OpenGlProfile = 0x00022008;
    public const int OpenGlCoreProfile = 0x00032001;
    public const int ScaleToMonitor = 0x0002200C;
    public const int Samples = 0x0002100D;

    public const int Release = 0;

    public const int ModShift = 1;
    public const int ModControl = 2;

    private const string Library = "glfw3";

    private static readonly string[] Names = OperatingSystem.IsWindows() ? ["glfw3.dll", "glfw.dll"]
        : OperatingSystem.IsMacOS()
            ? ["libglfw.3.dylib", "/opt/homebrew/lib/libglfw.3.dylib", "/usr/local/lib/libglfw.3.dylib"]
        : ["libglfw.so.3", "libglfw.so"];

    static Glfw() => NativeLibrary.SetDllImportResolver(typeof(Glfw).Assembly, Find);

    /// <summary>Whether the library is there.</summary>
    public static bool IsThere => Load() != 0;

    [LibraryImport(Library, EntryPoint = "glfwInit")]
    public static partial int Init();

    [LibraryImport(Library, EntryPoint = "glfwTerminate")]
    public static partial void Terminate();

    [LibraryImport(Library, EntryPoint = "glfwGetError")]
    public static partial int GetError(out nint description);

    [LibraryImport(Library, EntryPoint = "glfwWindowHint")]
    public static partial void WindowHint(int hint, int value);

    [LibraryImport(Library, EntryPoint = "glfwCreateWindow", StringMarshalling = StringMarshalling.Utf8)]
    public static partial nint CreateWindow(int width, int height, string title, nint monitor, nint share);

    [LibraryImport(Library, EntryPoint = "glfwDestroyWindow")]
    public static partial void DestroyWindow(nint window);

    [LibraryImport(Library, EntryPoint = "glfwMakeContextCurrent")]
    public static partial void MakeContextCurrent(nint window);

    [LibraryImport(Library, EntryPoint = "glfwGetProcAddress", StringMarshalling = StringMarshalling.Utf8)]
    public static partial nint GetProcAddress(string name);

    [LibraryImport(Library, EntryPoint = "glfwSwapInterval")]
    public static partial void SwapInterval(int frames);

    [LibraryImport(Library, EntryPoint = "glfwSwapBuffers")]
    public static partial void SwapBuffers(nint window);

    [LibraryImport(Library, EntryPoint = "glfwPollEvents")]
    public static partial void PollEvents();

    [LibraryImport(Library, EntryPoint = "glfwWaitEventsTimeout")]
    public static partial void WaitEventsTimeout(double seconds);

    [LibraryImport(Library, EntryPoint = "glfwPostEmptyEvent")]
    public static partial void PostEmptyEvent();

    [LibraryImport(Library, EntryPoint = "glfwWindowShouldClose")]
    public static partial int WindowShouldClose(nint window);

    [LibraryImport(Library, EntryPoint = "glfwSetWindowShouldClose")]
    public static partial void SetWindowShouldClose(nint window, int value);

    [LibraryImport(Library, EntryPoint = "glfwSetWindowTitle", StringMarshalling = StringMarshalling.Utf8)]
    public static partial void SetWindowTitle(nint window, string title);

    [LibraryImport(Library, EntryPoint = "glfwGetWindowSize")]
    public static partial void GetWindowSize(nint window, out int width, out int height);

    [LibraryImport(Library, EntryPoint = "glfwGetFramebufferSize")]
    public static partial void GetFramebufferSize(nint window, out int width, out int height);

    [LibraryImport(Library, EntryPoint = "glfwGetWindowContentScale")]
    public static partial void GetWindowContentScale(nint window, out float x, out float y);

    [LibraryImport(Library, EntryPoint = "glfwSetKeyCallback")]
    public static partial nint SetKeyCallback(nint window, delegate* unmanaged[Cdecl]<nint, int, int, int, int,
        void> callback);

    [LibraryImport(Library, EntryPoint = "glfwSetCharCallback")]
    public static partial nint SetCharCallback(nint window, delegate* unmanaged[Cdecl]<nint, uint, void> callback);

    [LibraryImport(Library, EntryPoint = "glfwSetMouseButtonCallback")]
    public static partial nint SetMouseButtonCallback(nint window, delegate* unmanaged[Cdecl]<nint, int, int, int,
        void> callback);

    [LibraryImport(Library, EntryPoint = "glfwSetCursorPosCallback")]
    public static partial nint SetCursorPosCallback(nint window, delegate* unmanaged[Cdecl]<nint, double, double,
        void> callback);

    [LibraryImport(Library, EntryPoint = "glfwSetScrollCallback")]
    public static partial nint SetScrollCallback(nint window, delegate* unmanaged[Cdecl]<nint, double, double,
        void> callback);

    [LibraryImport(Library, EntryPoint = "glfwSetFramebufferSizeCallback")]
    public static partial nint SetFramebufferSizeCallback(nint window, delegate* unmanaged[Cdecl]<nint, int, int,
        void> callback);

    [LibraryImport(Library, EntryPoint = "glfwSetWindowRefreshCallback")]
    public static partial nint SetWindowRefreshCallback(nint window, delegate* unmanaged[Cdecl]<nint, void> callback);

    private static nint Find(string name, Assembly assembly, DllImportSearchPath? path) => name == Library ? Load() : 0;

    private static nint Load()
    {
        foreach (var name in Names)
            if (NativeLibrary.TryLoad(name, typeof(Glfw).Assembly, null, out var library)) return library;
        return 0;
    }
}
