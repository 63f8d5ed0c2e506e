using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Gl;

/// <summary>Errors that OpenGL keeps until it is asked.</summary>
public static class GlErrors
{
    /// <exception cref="DrawingException">There is one.</exception>
    public static void Check(GL gl, string doing)
    {
        var error = gl.GetError();
        if (error != GLEnum.NoError) throw new DrawingException($"The graphics driver reports {error} while {doing}.");
    }
}
