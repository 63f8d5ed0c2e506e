using CanopySim.Drawing.Gl;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Window;

/// <summary>
/// A window with a context of OpenGL. All but <see cref="Wake"/> belongs to the thread that opened it.
/// </summary>
public interface IWindow : IGlContext
{
    /// <summary>Width of the picture in it [px].</summary>
    int Width { get; }

    /// <summary>Height of the picture in it [px].</summary>
    int Height { get; }

    /// <summary>Whether the person asked to close it.</summary>
    bool IsClosing { get; }

    /// <summary>
    /// Takes what happened, in its order, waiting so long for something to happen [s]; 0: not at all.
    /// </summary>
    void Take(Queue<InputEvent> events, double wait);

    /// <summary>Shows what was drawn.</summary>
    void Present();

    /// <summary>Ends a wait early; any thread may.</summary>
    void Wake();
}
