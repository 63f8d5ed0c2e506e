using System.Numerics;
using CanopySim.Drawing.Gl;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>A framebuffer of one point that holds the number of the blade seen there.</summary>
internal sealed class LeafPicker(GL gl) : IDisposable
{
    private readonly RenderTarget _target = new(gl, 0, SizedInternalFormat.R32i);

    /// <summary>What makes one pixel of a picture, from the upper left, the whole picture.</summary>
    public static Matrix4x4 Narrowed(int x, int y, int width, int height)
    {
        var (right, up) = ((2 * (x + 0.5f) / width) - 1, 1 - (2 * (y + 0.5f) / height));
        // In clip space, before the division by w: x' = width (x − right w), y' = height (y − up w).
        return new Matrix4x4(
            width, 0, 0, 0,
            0, height, 0, 0,
            0, 0, 1, 0,
            -width * right, -height * up, 0, 1);
    }

    public void Begin()
    {
        _target.Bind(1, 1);
        gl.Viewport(0, 0, 1, 1);
        ReadOnlySpan<int> none = [-1, 0, 0, 0];
        gl.ClearBuffer(BufferKind.Color, 0, none);
        gl.Clear(ClearBufferMask.DepthBufferBit);
    }

    public int Read()
    {
        Span<int> blade = [-1];
        gl.ReadPixels(0, 0, 1, 1, PixelFormat.RedInteger, PixelType.Int, blade);
        return blade[0];
    }

    public void Dispose() => _target.Dispose();
}
