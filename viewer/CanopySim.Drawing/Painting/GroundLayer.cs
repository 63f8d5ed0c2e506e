using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Numerics;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>The ground, rough like earth, and the noise that makes it so.</summary>
internal sealed class GroundLayer : IDisposable
{
    private const int NoiseSize = 256;

    private readonly GL _gl;
    private readonly VertexBuffer _corners;
    private readonly uint _array;
    private readonly uint _noise;
    private float _reach = -1;

    public GroundLayer(GL gl)
    {
        (_gl, _corners, _array, _noise) = (gl, new VertexBuffer(gl), gl.GenVertexArray(), gl.GenTexture());
        gl.BindVertexArray(_array);
        VertexAttributes.Set(gl, _corners, 0, 2, 2, 0);
        gl.BindVertexArray(0);
        BindNoise();
        gl.PixelStore(PixelStoreParameter.UnpackAlignment, 1);
        gl.TexImage2D<byte>(
            TextureTarget.Texture2D, 0, InternalFormat.R8, NoiseSize, NoiseSize, 0, PixelFormat.Red,
                PixelType.UnsignedByte, Noise());
        gl.GenerateMipmap(TextureTarget.Texture2D);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMinFilter,
            (int)GLEnum.LinearMipmapNearest);
    }

    public void BindNoise()
    {
        _gl.ActiveTexture(TextureUnit.Texture0 + SceneUniforms.NoiseUnit);
        _gl.BindTexture(TextureTarget.Texture2D, _noise);
    }

    public void Draw(ShaderProgram program, Vector3 eye, float reach)
    {
        if (reach != _reach)
        {
            _reach = reach;
            _corners.Upload<Vector2>([new(-reach, -reach), new(reach, -reach), new(-reach, reach), new(reach, reach)]);
        }

        program.Set("uMiddle", new Vector2(eye.X, eye.Y));
        _gl.BindVertexArray(_array);
        _gl.DrawArrays(PrimitiveType.TriangleStrip, 0, 4);
    }

    public void Dispose()
    {
        _corners.Dispose();
        _gl.DeleteVertexArray(_array);
        _gl.DeleteTexture(_noise);
    }

    // Random values on ever finer lattices that wrap around, each half as strong as the one before.
    private static byte[] Noise()
    {
        var noise = new byte[NoiseSize * NoiseSize];
        for (var y = 0; y < NoiseSize; y++)
        {
            for (var x = 0; x < NoiseSize; x++)
            {
                var (sum, weight) = (0.0, 0.5);
                for (var cells = 8; cells <= 128; cells *= 2, weight *= 0.62) sum += weight * Lattice(cells, x, y);
                noise[(y * NoiseSize) + x] = (byte)Math.Clamp(255 * ((sum * 0.85) + 0.0), 0, 255);
            }
        }

        return noise;
    }

    private static double Lattice(int cells, int x, int y)
    {
        var (u, v) = ((double)x * cells / NoiseSize, (double)y * cells / NoiseSize);
        var (i, j) = ((int)u, (int)v);
        var (s, t) = (Smooth(u - i), Smooth(v - j));
        return (((Value(i, j) * (1 - s)) + (Value(i + 1, j) * s)) * (1 - t))
            + (((Value(i, j + 1) * (1 - s)) + (Value(i + 1, j + 1) * s)) * t);

        double Value(int column, int row) =>
            SeededValue.Uniform(1, "ground", (cells * 1000) + (column % cells), row % cells);
        static double Smooth(double share) => share * share * (3 - (2 * share));
    }
}
