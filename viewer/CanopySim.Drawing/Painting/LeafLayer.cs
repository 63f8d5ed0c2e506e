using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Geometry;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// The blades of the cell on the graphics card, at every level of detail, and a share of the color table for each.
/// </summary>
internal sealed class LeafLayer : IDisposable
{
    private readonly GL _gl;
    private readonly CellMesh[] _meshes;
    private readonly VertexBuffer _shares;
    private readonly uint _sharesTexture;
    private IReadOnlyList<DrawnBlade> _blades = [];

    public LeafLayer(GL gl)
    {
        _gl = gl;
        _meshes = [.. BladeLevels.All.Select(_ => new CellMesh(gl, 3, 3, 3))];
        _shares = new VertexBuffer(gl, BufferTargetARB.TextureBuffer);
        _shares.Upload<float>([0]);
        _sharesTexture = gl.GenTexture();
        Bind();
        gl.TexBuffer(TextureTarget.TextureBuffer, SizedInternalFormat.R32f, _shares.Handle);
    }

    /// <summary>Blades of the cell.</summary>
    public int Count => _blades.Count;

    public void SetBlades(IReadOnlyList<DrawnBlade> blades)
    {
        _blades = blades;
        for (var level = 0; level < _meshes.Length; level++) Fill(_meshes[level], BladeLevels.All[level]);
    }

    /// <summary>A share for every blade; nothing else is uploaded.</summary>
    public void SetShares(ReadOnlySpan<float> shares)
    {
        if (!shares.IsEmpty) _shares.Upload(shares);
    }

    /// <summary>Binds the shares for reading.</summary>
    public void Bind()
    {
        _gl.ActiveTexture(TextureUnit.Texture0 + SceneUniforms.SharesUnit);
        _gl.BindTexture(TextureTarget.TextureBuffer, _sharesTexture);
    }

    /// <summary>Draws the copies at a level of detail.</summary>
    public void Draw(ShaderProgram program, ReadOnlySpan<Vector3> offsets, int level)
    {
        program.Set("uSwell", new Vector4(0, 0, 0, 1));
        _meshes[level].Draw(program, offsets);
    }

    /// <summary>Draws one blade as recorded, larger by a factor.</summary>
    public void DrawOne(ShaderProgram program, ReadOnlySpan<Vector3> offsets, int blade, float swell)
    {
        var (frame, count) = (_blades[blade].Frame, BladeLevels.All[0].Indices.Length);
        program.Set("uSwell", new Vector4(frame.Base + (0.4f * MathF.Sqrt(_blades[blade].Area) * frame.Tip), swell));
        _meshes[0].Draw(program, offsets, blade * count, count);
    }

    public void Dispose()
    {
        foreach (var mesh in _meshes) mesh.Dispose();
        _shares.Dispose();
        _gl.DeleteTexture(_sharesTexture);
    }

    private void Fill(CellMesh mesh, BladeLevel level)
    {
        mesh.Begin();
        for (var i = 0; i < _blades.Count; i += level.Step)
        {
            var (frame, scale) = (_blades[i].Frame, level.Swell * MathF.Sqrt(_blades[i].Area));
            var first = mesh.CornerCount;
            for (var corner = 0; corner < level.Points.Length; corner++)
            {
                var (point, normal) = (level.Points[corner], level.Normals[corner]);
                var at = frame.CellFromBlade(point, scale);
                var up = (normal.X * frame.Right) + (normal.Y * frame.Tip) + (normal.Z * frame.Normal);
                mesh.Corner(at.X, at.Y, at.Z, up.X, up.Y, up.Z, point.X, point.Y, i);
            }

            for (var index = 0; index < level.Indices.Length; index += 3)
                mesh.Triangle(first + level.Indices[index], first + level.Indices[index + 1], first
                    + level.Indices[index + 2]);
        }

        mesh.End();
    }
}
