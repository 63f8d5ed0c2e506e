using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Gl;

/// <summary>Numbers in the memory of the graphics card, replaced as a whole.</summary>
internal sealed class VertexBuffer(GL gl, BufferTargetARB target = BufferTargetARB.ArrayBuffer) : IDisposable
{
    private nuint _capacity;

    public uint Handle { get; } = gl.GenBuffer();

    /// <summary>Elements that were uploaded last.</summary>
    public int Count { get; private set; }

    public void Bind() => gl.BindBuffer(target, Handle);

    /// <summary>Replaces what it holds; memory grows only where the new does not fit.</summary>
    public unsafe void Upload<T>(ReadOnlySpan<T> values)
        where T : unmanaged
    {
        Bind();
        Count = values.Length;
        var bytes = (nuint)(values.Length * sizeof(T));
        if (bytes > _capacity)
        {
            _capacity = bytes + (bytes / 4);
            gl.BufferData(target, _capacity, null, BufferUsageARB.DynamicDraw);
        }

        if (bytes == 0) return;
        fixed (T* first = values) gl.BufferSubData(target, 0, bytes, first);
    }

    public void Dispose() => gl.DeleteBuffer(Handle);
}
