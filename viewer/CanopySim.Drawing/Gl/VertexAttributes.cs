using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Gl;

/// <summary>Attributes of the vertex array that is bound.</summary>
internal static class VertexAttributes
{
    /// <summary>Points an attribute at floats of a buffer.</summary>
    /// <param name="gl">The functions of OpenGL; a vertex array is bound.</param>
    /// <param name="buffer">Where the floats are.</param>
    /// <param name="location">Number in the shader.</param>
    /// <param name="components">Floats of it.</param>
    /// <param name="stride">Floats from one corner to the next.</param>
    /// <param name="offset">Floats before the first.</param>
    public static unsafe void Set(GL gl, VertexBuffer buffer, uint location, int components, int stride, int offset)
    {
        buffer.Bind();
        gl.EnableVertexAttribArray(location);
        gl.VertexAttribPointer(location, components, VertexAttribPointerType.Float, false,
            (uint)(stride * sizeof(float)), (void*)(offset * sizeof(float)));
    }
}
