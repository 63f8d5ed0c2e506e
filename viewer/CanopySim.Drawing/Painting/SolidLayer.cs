using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// Triangles of the cell, lit as round bodies: corners that lie together share the mean of their normals.
/// </summary>
internal sealed class SolidLayer(GL gl) : IDisposable
{
    private readonly CellMesh _mesh = new(gl, 3, 3);

    public void Set(Scene scene)
    {
        var corners = scene.Corners;
        Dictionary<Vector3, Vector3> sums = [];
        for (var i = 0; i < corners.Length; i += 3)
        {
            var normal = Vector3.Cross(corners[i + 1] - corners[i], corners[i + 2] - corners[i]);
            for (var corner = i; corner < i + 3; corner++) sums[corners[corner]] =
                sums.GetValueOrDefault(corners[corner]) + normal;
        }

        Dictionary<Vector3, uint> numbers = [];
        _mesh.Begin();
        foreach (var (point, sum) in sums)
        {
            numbers[point] = _mesh.CornerCount;
            _mesh.Corner(point.X, point.Y, point.Z, sum.X, sum.Y, sum.Z);
        }

        for (var i = 0; i < corners.Length; i += 3) _mesh.Triangle(numbers[corners[i]], numbers[corners[i + 1]],
            numbers[corners[i + 2]]);
        _mesh.End();
    }

    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets) => _mesh.Draw(program, offsets);

    public void Dispose() => _mesh.Dispose();
}
