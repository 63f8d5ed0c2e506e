using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// Round stalks, wires or posts, a strip each that faces whoever looks. The thickest stand first, so that the thin can
/// be left out.
/// </summary>
internal sealed class StalkLayer(GL gl) : IDisposable
{
    private const int IndicesPerStalk = 6;

    private readonly CellMesh _mesh = new(gl, 4, 4);
    private float[] _radii = [];

    public void Set(IEnumerable<DrawnStalk> stalks)
    {
        var sorted = stalks.OrderByDescending(stalk => stalk.FromRadius).ToArray();
        _radii = Array.ConvertAll(sorted, stalk => stalk.FromRadius);
        _mesh.Begin();
        foreach (var (from, to, fromRadius, toRadius) in sorted)
        {
            var (first, along) = (_mesh.CornerCount, to - from);
            Corner(from, fromRadius, -1);
            Corner(from, fromRadius, 1);
            Corner(to, toRadius, -1);
            Corner(to, toRadius, 1);
            _mesh.Triangle(first, first + 1, first + 2);
            _mesh.Triangle(first + 2, first + 1, first + 3);

            void Corner(Vector3 end, float radius, int side) =>
                _mesh.Corner(end.X, end.Y, end.Z, radius, along.X, along.Y, along.Z, side);
        }

        _mesh.End();
    }

    /// <summary>Draws the stalks that are at least so thick.</summary>
    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets, float leastRadius = 0)
    {
        var count = 0;
        while (count < _radii.Length && _radii[count] >= leastRadius) count++;
        _mesh.Draw(program, offsets, 0, IndicesPerStalk * count);
    }

    public void Dispose() => _mesh.Dispose();
}
