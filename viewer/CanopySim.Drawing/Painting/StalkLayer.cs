using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>Round stalks, wires or posts, a strip each that faces whoever looks. The thickest stand first, so that the thin can be left out.</summary>
internal sealed class StalkLayer : IDisposable
{
    private const int Floats = 8;

    private readonly GL _gl;
    private readonly VertexBuffer _ends;
    private readonly uint _array;
    private float[] _values = [];
    private float[] _radii = [];

    public StalkLayer(GL gl)
    {
        (_gl, _ends, _array) = (gl, new VertexBuffer(gl), gl.GenVertexArray());
    }

    public int Count { get; private set; }

    public void Set(IEnumerable<DrawnStalk> stalks)
    {
        var sorted = stalks.OrderByDescending(stalk => stalk.FromRadius).ToArray();
        Count = sorted.Length;
        if (_values.Length < Floats * Count) _values = new float[Floats * Count];
        _radii = Array.ConvertAll(sorted, stalk => stalk.FromRadius);
        for (var i = 0; i < Count; i++)
        {
            var (from, to) = (sorted[i].From, sorted[i].To);
            ReadOnlySpan<float> ends = [from.X, from.Y, from.Z, sorted[i].FromRadius, to.X, to.Y, to.Z, sorted[i].ToRadius];
            ends.CopyTo(_values.AsSpan(i * Floats));
        }

        _ends.Upload<float>(_values.AsSpan(0, Floats * Count));
    }

    /// <summary>Draws the stalks that are at least so thick.</summary>
    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets, float leastRadius = 0)
    {
        var count = 0;
        while (count < Count && _radii[count] >= leastRadius) count++;
        if (count == 0 || offsets.IsEmpty) return;
        _gl.BindVertexArray(_array);
        InstanceAttributes.Set(_gl, _ends, 0, 4, Floats, 0, offsets.Length);
        InstanceAttributes.Set(_gl, _ends, 1, 4, Floats, 4, offsets.Length);
        program.Set("uOffsets", offsets);
        program.Set("uCopies", offsets.Length);
        _gl.DrawArraysInstanced(PrimitiveType.TriangleStrip, 0, 4, (uint)(count * offsets.Length));
    }

    public void Dispose()
    {
        _ends.Dispose();
        _gl.DeleteVertexArray(_array);
    }
}
