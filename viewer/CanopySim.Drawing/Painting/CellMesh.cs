using System.Numerics;
using System.Runtime.InteropServices;
using CanopySim.Drawing.Gl;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// Triangles of the cell on the graphics card, drawn once for each copy of the cell: a mesh of many organs and few
/// copies is drawn several times faster by a processor than few triangles in many copies.
/// </summary>
internal sealed class CellMesh : IDisposable
{
    private readonly GL _gl;
    private readonly VertexBuffer _corners;
    private readonly VertexBuffer _indices;
    private readonly uint _array;
    private readonly List<float> _values = [];
    private readonly List<uint> _order = [];
    private readonly int _floats;

    public CellMesh(GL gl, params ReadOnlySpan<int> components)
    {
        _gl = gl;
        _array = gl.GenVertexArray();
        gl.BindVertexArray(_array);
        (_corners, _indices) = (new VertexBuffer(gl), new VertexBuffer(gl, BufferTargetARB.ElementArrayBuffer));
        foreach (var count in components) _floats += count;
        var offset = 0;
        for (var location = 0; location < components.Length; location++)
        {
            VertexAttributes.Set(gl, _corners, (uint)location, components[location], _floats, offset);
            offset += components[location];
        }

        _indices.Bind();
        gl.BindVertexArray(0);
    }

    /// <summary>Corners added so far.</summary>
    public uint CornerCount => (uint)(_values.Count / _floats);

    public int TriangleCount => _indices.Count / 3;

    /// <summary>Begins anew.</summary>
    public void Begin()
    {
        _values.Clear();
        _order.Clear();
    }

    /// <summary>Adds a corner's floats.</summary>
    public void Corner(params ReadOnlySpan<float> values) => _values.AddRange(values);

    public void Triangle(uint a, uint b, uint c) => _order.AddRange([a, b, c]);

    /// <summary>Uploads what was added.</summary>
    public void End()
    {
        _gl.BindVertexArray(_array);
        _corners.Upload<float>(CollectionsMarshal.AsSpan(_values));
        _indices.Upload<uint>(CollectionsMarshal.AsSpan(_order));
        _gl.BindVertexArray(0);
    }

    /// <summary>Draws all of it at every offset.</summary>
    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets) => Draw(program, offsets, 0, _indices.Count);

    /// <summary>Draws some of its indices at every offset.</summary>
    public unsafe void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets, int first, int count)
    {
        if (count == 0 || offsets.IsEmpty) return;
        _gl.BindVertexArray(_array);
        program.Set("uOffsets", offsets);
        _gl.DrawElementsInstanced(
            PrimitiveType.Triangles, (uint)count, DrawElementsType.UnsignedInt, (void*)(first * sizeof(uint)),
                (uint)offsets.Length);
    }

    public void Dispose()
    {
        _corners.Dispose();
        _indices.Dispose();
        _gl.DeleteVertexArray(_array);
    }
}
