using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Gl;

/// <summary>
/// OpenGL without window and display server: EGL on Mesa's surfaceless platform (EGL_MESA_platform_surfaceless). There
/// is no framebuffer but those that a drawing makes.
/// </summary>
public sealed class EglContext : IGlContext
{
    /// <summary>The system's library.</summary>
    public const string Library = "libEGL.so.1";

    // Numbers of the registry of EGL.
    private const uint SurfacelessPlatform = 0x31DD;
    private const uint OpenGlApi = 0x30A2;
    private const int RenderableType = 0x3040;
    private const int OpenGlBit = 0x0008;
    private const int SurfaceType = 0x3033;
    private const int MajorVersion = 0x3098;
    private const int MinorVersion = 0x30FB;
    private const int ProfileMask = 0x30FD;
    private const int CoreProfile = 1;
    private const int None = 0x3038;

    private readonly EglFunctions _egl;
    private readonly nint _display;
    private nint _context;

    private EglContext(EglFunctions egl, nint display, nint context)
    {
        (_egl, _display, _context) = (egl, display, context);
        MakeCurrent();
        Gl = GL.GetApi(name => egl.GetProcAddress(name));
    }

    public GL Gl { get; }

    /// <summary>Makes a context and makes it this thread's.</summary>
    /// <param name="library">Name of the library; another one only to try out what is said when it is missing.</param>
    /// <param name="isLinux">Whether the system is Linux; said only to try out what is said elsewhere.</param>
    /// <exception cref="DrawingException">It is missing, or cannot do what is needed.</exception>
    public static EglContext Create(string library = Library, bool? isLinux = null)
    {
        if (!(isLinux ?? OperatingSystem.IsLinux()))
        {
            throw new DrawingException(
                "Pictures without a window are drawn on Linux alone, with Mesa's EGL. Here the window shows the same: "
                + "'canopysim-view' with the scenario or the results folder.");
        }

        var egl = EglFunctions.TryLoad(library) ?? throw new DrawingException(
            $"Pictures need the library {library} (EGL), which was not found. Install it: on Debian and Ubuntu "
            + "'apt-get install libegl1 libegl-mesa0 libgl1-mesa-dri'.");
        var display = egl.GetPlatformDisplay()?.Invoke(SurfacelessPlatform, 0, null) ?? 0;
        if (display == 0 || egl.Initialize(display, out _, out _) == 0) throw Refused(egl,
            "has no surfaceless display");
        egl.BindApi(OpenGlApi);
        var configs = new nint[1];
        int[] wanted = [RenderableType, OpenGlBit, SurfaceType, 0, None];
        if (egl.ChooseConfig(display, wanted, configs, 1, out var found) == 0 || found == 0)
            throw Refused(egl, "has no configuration for OpenGL");
        int[] version = [MajorVersion, 3, MinorVersion, 3, ProfileMask, CoreProfile, None];
        var context = egl.CreateContext(display, configs[0], 0, version);
        return context == 0 ? throw Refused(egl, "gave no context of OpenGL 3.3")
            : new EglContext(egl, display, context);
    }

    public void MakeCurrent()
    {
        if (_egl.MakeCurrent(_display, 0, 0, _context) == 0) throw Refused(_egl, "would not make the context current");
    }

    public void Dispose()
    {
        if (_context == 0) return;
        // The display stays: every context of the process shares it.
        _egl.MakeCurrent(_display, 0, 0, 0);
        _egl.DestroyContext(_display, _context);
        _context = 0;
        Gl.Dispose();
    }

    private static DrawingException Refused(EglFunctions egl, string what) => new(
        $"EGL {what} (error 0x{egl.GetError():X}). Pictures need Mesa's drivers: on Debian and Ubuntu "
        + "'apt-get install libegl-mesa0 libgl1-mesa-dri'.");
}
