using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Gl;

/// <summary>
/// A framebuffer of its own with depth, with several samples a pixel or one; made anew only when its size changes.
/// </summary>
internal sealed class RenderTarget(GL gl, int samples, SizedInternalFormat color = SizedInternalFormat.Rgba8)
    : IDisposable
{
    private uint _color;
    private uint _depth;

    public uint Handle { get; private set; }

    public int Width { get; private set; }

    public int Height { get; private set; }

    /// <summary>Binds it at a size.</summary>
    /// <exception cref="DrawingException">The driver cannot make it.</exception>
    public void Bind(int width, int height)
    {
        if (width != Width || height != Height) Make(width, height);
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, Handle);
    }

    public void Dispose() => Free();

    private void Make(int width, int height)
    {
        Free();
        (Width, Height) = (width, height);
        Handle = gl.GenFramebuffer();
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, Handle);
        _color = Storage((InternalFormat)color, FramebufferAttachment.ColorAttachment0);
        _depth = Storage(InternalFormat.DepthComponent24, FramebufferAttachment.DepthAttachment);
        var state = gl.CheckFramebufferStatus(FramebufferTarget.Framebuffer);
        if (state != GLEnum.FramebufferComplete)
            throw new DrawingException(
                $"The driver makes no picture of {width} × {height} points with {samples} samples each ({state}).");
    }

    private uint Storage(InternalFormat format, FramebufferAttachment attachment)
    {
        var buffer = gl.GenRenderbuffer();
        gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, buffer);
        gl.RenderbufferStorageMultisample(RenderbufferTarget.Renderbuffer, (uint)samples, format, (uint)Width,
            (uint)Height);
        gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, attachment, RenderbufferTarget.Renderbuffer, buffer);
        return buffer;
    }

    private void Free()
    {
        if (Handle == 0) return;
        gl.DeleteFramebuffer(Handle);
        gl.DeleteRenderbuffer(_color);
        gl.DeleteRenderbuffer(_depth);
        Handle = 0;
    }
}
