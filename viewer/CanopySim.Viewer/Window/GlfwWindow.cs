using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using CanopySim.Viewer.State;
using Silk.NET.OpenGL;

namespace CanopySim.Viewer.Window;

/// <summary>A window of the system's GLFW.</summary>
public sealed unsafe class GlfwWindow : IWindow
{
    private static readonly Dictionary<nint, GlfwWindow> Open = [];

    private readonly Queue<InputEvent> _events = new();
    private nint _handle;
    private float _pointerX;
    private float _pointerY;

    /// <summary>Opens it.</summary>
    /// <param name="width">Width [units of the screen].</param>
    /// <param name="height">Height.</param>
    /// <param name="title">What its bar says.</param>
    /// <exception cref="WindowException">There is no library, no display, or no OpenGL 3.3.</exception>
    public GlfwWindow(int width, int height, string title)
    {
        if (!Glfw.IsThere) throw new WindowException(WindowHelp.NoLibrary);
        if (Glfw.Init() == 0) throw new WindowException(WindowHelp.NoDisplay(LastError()));
        Glfw.WindowHint(Glfw.ContextVersionMajor, 3);
        Glfw.WindowHint(Glfw.ContextVersionMinor, 3);
        Glfw.WindowHint(Glfw.OpenGlProfile, Glfw.OpenGlCoreProfile);
        Glfw.WindowHint(Glfw.OpenGlForwardCompatible, 1);
        Glfw.WindowHint(Glfw.ScaleToMonitor, 1);

        // Smoothing is done in the picture's own target, only where it rests.
        Glfw.WindowHint(Glfw.Samples, 0);
        _handle = Glfw.CreateWindow(width, height, title, 0, 0);
        if (_handle == 0)
        {
            var why = LastError();
            Glfw.Terminate();
            throw new WindowException(WindowHelp.NoContext(why));
        }

        Open[_handle] = this;
        MakeCurrent();
        Gl = GL.GetApi(Glfw.GetProcAddress);
        Glfw.SwapInterval(1);
        Glfw.SetKeyCallback(_handle, &OnKey);
        Glfw.SetCharCallback(_handle, &OnChar);
        Glfw.SetMouseButtonCallback(_handle, &OnButton);
        Glfw.SetCursorPosCallback(_handle, &OnPointer);
        Glfw.SetScrollCallback(_handle, &OnScroll);
        Glfw.SetFramebufferSizeCallback(_handle, &OnSize);
        Glfw.SetWindowRefreshCallback(_handle, &OnRefresh);
        NoteSize();
    }

    public GL Gl { get; }

    public int Width { get; private set; }

    public int Height { get; private set; }

    public bool IsClosing => Glfw.WindowShouldClose(_handle) != 0;

    public void MakeCurrent() => Glfw.MakeContextCurrent(_handle);

    public void Take(Queue<InputEvent> events, double wait)
    {
        if (wait > 0 && _events.Count == 0) Glfw.WaitEventsTimeout(wait);
        else Glfw.PollEvents();
        while (_events.TryDequeue(out var happened)) events.Enqueue(happened);
    }

    public void Present() => Glfw.SwapBuffers(_handle);

    public void Wake() => Glfw.PostEmptyEvent();

    public void Dispose()
    {
        if (_handle == 0) return;
        Open.Remove(_handle);
        Gl.Dispose();
        Glfw.DestroyWindow(_handle);
        Glfw.Terminate();
        _handle = 0;
    }

    private static string LastError()
    {
        _ = Glfw.GetError(out var text);
        return text == 0 ? "no reason given" : Marshal.PtrToStringUTF8(text) ?? "no reason given";
    }

    private void NoteSize()
    {
        Glfw.GetFramebufferSize(_handle, out var width, out var height);
        Glfw.GetWindowContentScale(_handle, out var scale, out _);

        // A window that is put away has no size; its last one stays.
        if (width <= 0 || height <= 0) return;
        (Width, Height) = (width, height);
        _events.Enqueue(new Resize(width, height, scale > 0 ? scale : 1));
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void OnKey(nint handle, int key, int code, int action, int modifiers)
    {
        if (action == Glfw.Release || !Open.TryGetValue(handle, out var window)) return;
        if (GlfwKeys.Closes(key, modifiers)) Glfw.SetWindowShouldClose(handle, 1);
        if (GlfwKeys.Of(key) is not { } named) return;
        window._events.Enqueue(new KeyDown(named, GlfwKeys.Modifiers(modifiers)));
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void OnChar(nint handle, uint character)
    {
        if (Open.TryGetValue(handle, out var window)) window._events.Enqueue(
            new TextTyped(char.ConvertFromUtf32((int)character)));
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void OnButton(nint handle, int button, int action, int modifiers)
    {
        if (!Open.TryGetValue(handle, out var window)) return;
        var named = button switch
        {
            0 => PointerButton.Main,
            1 => PointerButton.Second,
            2 => PointerButton.Middle,
            _ => (PointerButton?)null,
        };
        if (named is not { } which) return;
        window._events.Enqueue(action == Glfw.Release
            ? new PointerUp(window._pointerX, window._pointerY, which)
            : new PointerDown(window._pointerX, window._pointerY, which));
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void OnPointer(nint handle, double x, double y)
    {
        if (!Open.TryGetValue(handle, out var window)) return;

        // Where the screen is finer than its units, the picture has more pixels than the window has units.
        Glfw.GetWindowSize(handle, out var width, out var height);
        window._pointerX = (float)(x * window.Width / Math.Max(1, width));
        window._pointerY = (float)(y * window.Height / Math.Max(1, height));
        window._events.Enqueue(new PointerMove(window._pointerX, window._pointerY));
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void OnScroll(nint handle, double x, double y)
    {
        if (Open.TryGetValue(handle, out var window) && y != 0)
            window._events.Enqueue(new Wheel(window._pointerX, window._pointerY, (float)y));
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void OnSize(nint handle, int width, int height)
    {
        if (Open.TryGetValue(handle, out var window)) window.NoteSize();
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static void OnRefresh(nint handle)
    {
        if (Open.TryGetValue(handle, out var window)) window.NoteSize();
    }
}
