using CanopySim.Drawing;
using Silk.NET.OpenGL;

namespace CanopySim.Viewer.Window;

/// <summary>Keeps the canopy's picture, so that it is drawn again only when it changed.</summary>
internal sealed class PictureLayer(GL gl) : IDisposable
{
    private uint _framebuffer;
    private uint _color;

    public int Width { get; private set; }

    public int Height { get; private set; }

    /// <summary>The framebuffer to draw into, of that size.</summary>
    /// <exception cref="DrawingException">The driver cannot make it.</exception>
    public uint Fit(int width, int height)
    {
        if (_framebuffer != 0 && width == Width && height == Height) return _framebuffer;
        Free();
        (Width, Height) = (width, height);
        _framebuffer = gl.GenFramebuffer();
        _color = gl.GenRenderbuffer();
        gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _color);
        gl.RenderbufferStorage(RenderbufferTarget.Renderbuffer, InternalFormat.Rgba8, (uint)width, (uint)height);
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0,
            RenderbufferTarget.Renderbuffer, _color);
        if (gl.CheckFramebufferStatus(FramebufferTarget.Framebuffer) != GLEnum.FramebufferComplete)
            throw new DrawingException($"The driver makes no picture of {width} × {height} points.");
        return _framebuffer;
    }

    /// <summary>Copies it into another framebuffer, its lower left corner there.</summary>
    public void CopyTo(uint framebuffer, int left, int bottom)
    {
        gl.BindFramebuffer(FramebufferTarget.ReadFramebuffer, _framebuffer);
        gl.BindFramebuffer(FramebufferTarget.DrawFramebuffer, framebuffer);
        gl.BlitFramebuffer(
            0, 0, Width, Height, left, bottom, left + Width, bottom + Height, ClearBufferMask.ColorBufferBit,
                BlitFramebufferFilter.Nearest);
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, framebuffer);
    }

    public void Dispose() => Free();

    private void Free()
    {
        if (_framebuffer == 0) return;
        gl.DeleteFramebuffer(_framebuffer);
        gl.DeleteRenderbuffer(_color);
        _framebuffer = 0;
    }
}
