using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>Clusters: a body of revolution, broad in the shoulders and narrow at the tip, hung and sized for each.</summary>
internal sealed class ClusterLayer : IDisposable
{
    private const int Floats = 5;

    // Radius on the way down, both as shares. Assumed.
    private static readonly (float Down, float Radius)[] Near = [(0, 0.15f), (0.07f, 0.75f), (0.25f, 1), (0.5f, 0.88f), (0.78f, 0.55f), (0.95f, 0.28f), (1, 0)];
    private static readonly (float Down, float Radius)[] Far = [(0, 0.2f), (0.28f, 1), (1, 0)];

    private readonly GL _gl;
    private readonly VertexBuffer _places;
    private readonly (uint Array, VertexBuffer Corners)[] _meshes;

    public ClusterLayer(GL gl)
    {
        _gl = gl;
        _places = new VertexBuffer(gl);
        _meshes = [Mesh(Near, 10), Mesh(Far, 4)];
    }

    public int Count { get; private set; }

    public void Set(IReadOnlyList<DrawnCluster> clusters)
    {
        Count = clusters.Count;
        var values = new float[Floats * Count];
        for (var i = 0; i < Count; i++)
        {
            var (top, length, radius) = clusters[i];
            ReadOnlySpan<float> place = [top.X, top.Y, top.Z, length, radius];
            place.CopyTo(values.AsSpan(i * Floats));
        }

        _places.Upload<float>(values);
    }

    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets, bool isNear)
    {
        if (Count == 0 || offsets.IsEmpty) return;
        var (array, corners) = _meshes[isNear ? 0 : 1];
        _gl.BindVertexArray(array);
        InstanceAttributes.Set(_gl, _places, 2, 4, Floats, 0, offsets.Length);
        InstanceAttributes.Set(_gl, _places, 3, 1, Floats, 4, offsets.Length);
        program.Set("uOffsets", offsets);
        program.Set("uCopies", offsets.Length);
        _gl.DrawArraysInstanced(PrimitiveType.Triangles, 0, (uint)(corners.Count / 7), (uint)(Count * offsets.Length));
    }

    public void Dispose()
    {
        _places.Dispose();
        foreach (var (array, corners) in _meshes)
        {
            _gl.DeleteVertexArray(array);
            corners.Dispose();
        }
    }

    private (uint Array, VertexBuffer Corners) Mesh((float Down, float Radius)[] rings, int sides)
    {
        List<float> corners = [];
        for (var ring = 0; ring < rings.Length - 1; ring++)
        {
            for (var side = 0; side < sides; side++)
            {
                Add(ring, side);
                Add(ring + 1, side);
                Add(ring + 1, side + 1);
                Add(ring, side);
                Add(ring + 1, side + 1);
                Add(ring, side + 1);
            }
        }

        var array = _gl.GenVertexArray();
        var buffer = new VertexBuffer(_gl);
        _gl.BindVertexArray(array);
        buffer.Upload<float>(corners.ToArray());
        InstanceAttributes.Set(_gl, buffer, 0, 3, 7, 0);
        InstanceAttributes.Set(_gl, buffer, 1, 3, 7, 3);
        InstanceAttributes.Set(_gl, buffer, 4, 1, 7, 6);
        _gl.BindVertexArray(0);
        return (array, buffer);

        void Add(int ring, int side)
        {
            var angle = 2 * MathF.PI * side / sides;
            var (sin, cos) = MathF.SinCos(angle);
            var (down, radius) = rings[ring];
            var (above, below) = (rings[Math.Max(0, ring - 1)], rings[Math.Min(rings.Length - 1, ring + 1)]);
            var normal = Vector2.Normalize(new Vector2(below.Down - above.Down, below.Radius - above.Radius));
            corners.AddRange([radius * cos, radius * sin, -down, normal.X * cos, normal.X * sin, normal.Y, angle]);
        }
    }
}
