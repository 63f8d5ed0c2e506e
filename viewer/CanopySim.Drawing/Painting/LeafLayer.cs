using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>The blades of the cell on the graphics card: a matrix each, and a share of the color table each.</summary>
internal sealed class LeafLayer : IDisposable
{
    private const int MatrixFloats = 12;

    private readonly GL _gl;
    private readonly VertexBuffer _matrices;
    private readonly VertexBuffer _shares;
    private readonly List<(uint Array, VertexBuffer Points, VertexBuffer Normals, VertexBuffer Indices)> _meshes = [];
    private float[] _matrixValues = [];

    public LeafLayer(GL gl)
    {
        _gl = gl;
        (_matrices, _shares) = (new VertexBuffer(gl), new VertexBuffer(gl));
        foreach (var level in BladeLevels.All)
        {
            var array = gl.GenVertexArray();
            gl.BindVertexArray(array);
            var (points, normals, indices) = (new VertexBuffer(gl), new VertexBuffer(gl), new VertexBuffer(gl, BufferTargetARB.ElementArrayBuffer));
            points.Upload<Vector3>(level.Points);
            normals.Upload<Vector3>(level.Normals);
            indices.Upload<ushort>(level.Indices);
            InstanceAttributes.Set(gl, points, 0, 3, 3, 0);
            InstanceAttributes.Set(gl, normals, 1, 3, 3, 0);
            _meshes.Add((array, points, normals, indices));
        }

        gl.BindVertexArray(0);
    }

    /// <summary>Blades of the cell.</summary>
    public int Count { get; private set; }

    public void SetBlades(IReadOnlyList<DrawnBlade> blades)
    {
        Count = blades.Count;
        if (_matrixValues.Length < Count * MatrixFloats) _matrixValues = new float[Count * MatrixFloats];
        for (var i = 0; i < Count; i++)
        {
            var blade = blades[i];
            var (scale, frame) = (MathF.Sqrt(blade.Area), blade.Frame);
            var (u, v, w) = (scale * frame.Right, scale * frame.Tip, scale * frame.Normal);
            ReadOnlySpan<float> rows =
            [
                u.X, v.X, w.X, frame.Base.X,
                u.Y, v.Y, w.Y, frame.Base.Y,
                u.Z, v.Z, w.Z, frame.Base.Z,
            ];
            rows.CopyTo(_matrixValues.AsSpan(i * MatrixFloats));
        }

        _matrices.Upload<float>(_matrixValues.AsSpan(0, Count * MatrixFloats));
    }

    /// <summary>A share for every blade; nothing else is uploaded.</summary>
    public void SetShares(ReadOnlySpan<float> shares) => _shares.Upload(shares);

    /// <summary>Draws the copies whose offsets were set.</summary>
    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets, int level)
    {
        var mesh = BladeLevels.All[level];
        Draw(program, offsets, level, 0, (Count + mesh.Step - 1) / mesh.Step, mesh.Step, mesh.Swell);
    }

    /// <summary>Draws one blade as recorded, larger by a factor.</summary>
    public void DrawOne(ShaderProgram program, ReadOnlySpan<Vector3> offsets, int blade, float swell) =>
        Draw(program, offsets, 0, blade, 1, 1, swell);

    public void Dispose()
    {
        _matrices.Dispose();
        _shares.Dispose();
        foreach (var (array, points, normals, indices) in _meshes)
        {
            _gl.DeleteVertexArray(array);
            points.Dispose();
            normals.Dispose();
            indices.Dispose();
        }
    }

    private unsafe void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets, int level, int first, int count, int step, float swell)
    {
        if (count == 0 || offsets.IsEmpty) return;
        var mesh = _meshes[level];
        _gl.BindVertexArray(mesh.Array);
        for (var row = 0; row < 3; row++)
            InstanceAttributes.Set(_gl, _matrices, (uint)(2 + row), 4, MatrixFloats * step, (first * MatrixFloats) + (4 * row), offsets.Length);
        InstanceAttributes.Set(_gl, _shares, 5, 1, step, first, offsets.Length);
        program.Set("uOffsets", offsets);
        program.Set("uCopies", offsets.Length);
        program.Set("uStep", step);
        program.Set("uSwell", swell);
        _gl.DrawElementsInstanced(
            PrimitiveType.Triangles, (uint)mesh.Indices.Count, DrawElementsType.UnsignedShort, null, (uint)(count * offsets.Length));
    }
}
