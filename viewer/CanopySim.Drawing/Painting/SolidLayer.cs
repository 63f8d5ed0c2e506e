using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>Triangles of the cell, lit as round bodies: corners that lie together share the mean of their normals.</summary>
internal sealed class SolidLayer : IDisposable
{
    private readonly GL _gl;
    private readonly VertexBuffer _points;
    private readonly VertexBuffer _normals;
    private readonly uint _array;

    public SolidLayer(GL gl)
    {
        _gl = gl;
        (_points, _normals, _array) = (new VertexBuffer(gl), new VertexBuffer(gl), gl.GenVertexArray());
        gl.BindVertexArray(_array);
        InstanceAttributes.Set(gl, _points, 0, 3, 3, 0);
        InstanceAttributes.Set(gl, _normals, 1, 3, 3, 0);
        gl.BindVertexArray(0);
    }

    public void Set(Scene scene)
    {
        var corners = scene.Corners;
        Dictionary<Vector3, Vector3> sums = [];
        for (var i = 0; i < corners.Length; i += 3)
        {
            var normal = Vector3.Cross(corners[i + 1] - corners[i], corners[i + 2] - corners[i]);
            for (var corner = i; corner < i + 3; corner++) sums[corners[corner]] = sums.GetValueOrDefault(corners[corner]) + normal;
        }

        _points.Upload<Vector3>(corners);
        _normals.Upload<Vector3>(Array.ConvertAll(corners, corner => sums[corner]));
    }

    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets)
    {
        if (_points.Count == 0 || offsets.IsEmpty) return;
        _gl.BindVertexArray(_array);
        program.Set("uOffsets", offsets);
        program.Set("uCopies", offsets.Length);
        _gl.DrawArraysInstanced(PrimitiveType.Triangles, 0, (uint)_points.Count, (uint)offsets.Length);
    }

    public void Dispose()
    {
        _points.Dispose();
        _normals.Dispose();
        _gl.DeleteVertexArray(_array);
    }
}
