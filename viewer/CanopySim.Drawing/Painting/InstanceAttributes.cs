using CanopySim.Drawing.Gl;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>Attributes of a vertex array. Copies of the cell share an instance's attributes: their divisor is the number of copies.</summary>
internal static class InstanceAttributes
{
    /// <summary>Points an attribute at floats of a buffer.</summary>
    /// <param name="gl">The functions of OpenGL; a vertex array is bound.</param>
    /// <param name="buffer">Where the floats are.</param>
    /// <param name="location">Number in the shader.</param>
    /// <param name="components">Floats of it.</param>
    /// <param name="stride">Floats from one to the next.</param>
    /// <param name="offset">Floats before the first.</param>
    /// <param name="divisor">Instances that share it; 0: of a vertex.</param>
    public static unsafe void Set(GL gl, VertexBuffer buffer, uint location, int components, int stride, int offset, int divisor = 0)
    {
        buffer.Bind();
        gl.EnableVertexAttribArray(location);
        gl.VertexAttribPointer(location, components, VertexAttribPointerType.Float, false, (uint)(stride * sizeof(float)), (void*)(offset * sizeof(float)));
        gl.VertexAttribDivisor(location, (uint)divisor);
    }
}
