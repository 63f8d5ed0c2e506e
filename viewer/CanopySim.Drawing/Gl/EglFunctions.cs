using System.Runtime.InteropServices;

namespace CanopySim.Drawing.Gl;

/// <summary>The few functions of EGL that an off-screen context needs, out of the system's library.</summary>
internal sealed class EglFunctions
{
    private EglFunctions(nint library)
    {
        GetProcAddress = Of<GetProcAddressFunction>(library, "eglGetProcAddress");
        Initialize = Of<InitializeFunction>(library, "eglInitialize");
        BindApi = Of<BindApiFunction>(library, "eglBindAPI");
        ChooseConfig = Of<ChooseConfigFunction>(library, "eglChooseConfig");
        CreateContext = Of<CreateContextFunction>(library, "eglCreateContext");
        MakeCurrent = Of<MakeCurrentFunction>(library, "eglMakeCurrent");
        DestroyContext = Of<DestroyContextFunction>(library, "eglDestroyContext");
        GetError = Of<GetErrorFunction>(library, "eglGetError");
    }

    public delegate nint GetProcAddressFunction([MarshalAs(UnmanagedType.LPUTF8Str)] string name);

    public delegate nint GetPlatformDisplayFunction(uint platform, nint nativeDisplay, int[]? attributes);

    public delegate int InitializeFunction(nint display, out int major, out int minor);

    public delegate int BindApiFunction(uint api);

    public delegate int ChooseConfigFunction(nint display, int[] attributes, nint[] configs, int size, out int count);

    public delegate nint CreateContextFunction(nint display, nint config, nint share, int[] attributes);

    public delegate int MakeCurrentFunction(nint display, nint draw, nint read, nint context);

    public delegate int DestroyContextFunction(nint display, nint context);

    public delegate int GetErrorFunction();

    public GetProcAddressFunction GetProcAddress { get; }

    public InitializeFunction Initialize { get; }

    public BindApiFunction BindApi { get; }

    public ChooseConfigFunction ChooseConfig { get; }

    public CreateContextFunction CreateContext { get; }

    public MakeCurrentFunction MakeCurrent { get; }

    public DestroyContextFunction DestroyContext { get; }

    public GetErrorFunction GetError { get; }

    /// <summary>Null where the library is not there or is none of EGL.</summary>
    public static EglFunctions? TryLoad(string library)
    {
        if (!NativeLibrary.TryLoad(library, out var handle)) return null;
        try
        {
            return new EglFunctions(handle);
        }
        catch (EntryPointNotFoundException)
        {
            return null;
        }
    }

    /// <summary>The function that gives a display of a platform; null where the library has none.</summary>
    public GetPlatformDisplayFunction? GetPlatformDisplay() => GetProcAddress("eglGetPlatformDisplayEXT") switch
    {
        0 => null,
        var address => Marshal.GetDelegateForFunctionPointer<GetPlatformDisplayFunction>(address),
    };

    private static T Of<T>(nint library, string name)
        where T : Delegate =>
        Marshal.GetDelegateForFunctionPointer<T>(NativeLibrary.GetExport(library, name));
}
