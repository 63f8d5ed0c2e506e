using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Gl;

/// <summary>An off-screen picture whose pixels can be read.</summary>
public sealed class PixelPicture(GL gl) : IDisposable
{
    private readonly RenderTarget _target = new(gl, 0);

    /// <summary>Framebuffer to draw into; bound.</summary>
    public uint Framebuffer(int width, int height)
    {
        _target.Bind(width, height);
        return _target.Handle;
    }

    /// <summary>Red, green, blue, alpha of each pixel, from the upper left.</summary>
    public byte[] Read()
    {
        var (width, height) = (_target.Width, _target.Height);
        _target.Bind(width, height);
        var upwards = new byte[4 * width * height];
        gl.PixelStore(PixelStoreParameter.PackAlignment, 1);
        gl.ReadPixels<byte>(0, 0, (uint)width, (uint)height, PixelFormat.Rgba, PixelType.UnsignedByte, upwards);
        var pixels = new byte[upwards.Length];
        for (var row = 0; row < height; row++)
            upwards.AsSpan(4 * width * (height - 1 - row), 4 * width).CopyTo(pixels.AsSpan(4 * width * row));
        return pixels;
    }

    public void Dispose() => _target.Dispose();
}
