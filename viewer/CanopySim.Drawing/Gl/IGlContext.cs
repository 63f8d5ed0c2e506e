using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Gl;

/// <summary>
/// A context of OpenGL 3.3 core, off-screen or of a window. It belongs to the thread that made it current.
/// </summary>
public interface IGlContext : IDisposable
{
    /// <summary>The functions of OpenGL.</summary>
    GL Gl { get; }

    /// <summary>Makes it the context of this thread.</summary>
    void MakeCurrent();
}
