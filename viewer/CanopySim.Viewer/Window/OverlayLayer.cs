using CanopySim.Drawing;
using Silk.NET.OpenGL;
using SkiaSharp;

namespace CanopySim.Viewer.Window;

/// <summary>
/// The screen's own picture, drawn by Skia into memory and laid over what is in a framebuffer; its colors are
/// multiplied by their alpha.
/// </summary>
internal sealed unsafe class OverlayLayer : IDisposable
{
    private const string VertexText = """
        #version 330 core
        out vec2 at;
        void main()
        {
            vec2 corner = vec2((gl_VertexID & 1) * 2, (gl_VertexID >> 1) * 2);
            at = vec2(corner.x, 1.0 - corner.y);
            gl_Position = vec4((corner * 2.0) - 1.0, 0.0, 1.0);
        }
        """;

    private const string FragmentText = """
        #version 330 core
        in vec2 at;
        out vec4 color;
        uniform sampler2D screen;
        void main() { color = texture(screen, at); }
        """;

    private readonly GL _gl;
    private readonly uint _program;
    private readonly uint _corners;
    private readonly uint _texture;
    private SKBitmap? _bitmap;
    private SKCanvas? _canvas;

    /// <exception cref="DrawingException">The driver does not take the shaders.</exception>
    public OverlayLayer(GL gl)
    {
        _gl = gl;
        _program = Link(gl);
        _corners = gl.GenVertexArray();
        _texture = gl.GenTexture();
        gl.BindTexture(TextureTarget.Texture2D, _texture);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMinFilter, (int)GLEnum.Nearest);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMagFilter, (int)GLEnum.Nearest);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureWrapS, (int)GLEnum.ClampToEdge);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureWrapT, (int)GLEnum.ClampToEdge);
    }

    /// <summary>Draws anew what lies over the picture.</summary>
    public void Paint(int width, int height, Action<SKCanvas> draw)
    {
        if (_bitmap is null || _bitmap.Width != width || _bitmap.Height != height)
        {
            _canvas?.Dispose();
            _bitmap?.Dispose();
            _bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
            _canvas = new SKCanvas(_bitmap);
        }

        _bitmap.Erase(SKColors.Transparent);
        draw(_canvas!);
        _canvas!.Flush();
        _gl.ActiveTexture(TextureUnit.Texture0);
        _gl.BindTexture(TextureTarget.Texture2D, _texture);
        _gl.PixelStore(PixelStoreParameter.UnpackAlignment, 4);
        _gl.TexImage2D(
            TextureTarget.Texture2D, 0, InternalFormat.Rgba8, (uint)width, (uint)height, 0, PixelFormat.Rgba,
                PixelType.UnsignedByte,
            (void*)_bitmap.GetPixels());
    }

    /// <summary>Lays it over the whole of the framebuffer that is bound.</summary>
    public void Lay(int width, int height)
    {
        _gl.Viewport(0, 0, (uint)width, (uint)height);
        _gl.Disable(EnableCap.DepthTest);
        _gl.Enable(EnableCap.Blend);
        _gl.BlendFunc(BlendingFactor.One, BlendingFactor.OneMinusSrcAlpha);
        _gl.UseProgram(_program);
        _gl.ActiveTexture(TextureUnit.Texture0);
        _gl.BindTexture(TextureTarget.Texture2D, _texture);
        _gl.Uniform1(_gl.GetUniformLocation(_program, "screen"), 0);
        _gl.BindVertexArray(_corners);
        _gl.DrawArrays(PrimitiveType.Triangles, 0, 3);
        _gl.BindVertexArray(0);
        _gl.UseProgram(0);
        _gl.Disable(EnableCap.Blend);
    }

    public void Dispose()
    {
        _canvas?.Dispose();
        _bitmap?.Dispose();
        _gl.DeleteTexture(_texture);
        _gl.DeleteVertexArray(_corners);
        _gl.DeleteProgram(_program);
    }

    private static uint Link(GL gl)
    {
        var program = gl.CreateProgram();
        var shaders = new[] { Compile(gl, ShaderType.VertexShader, VertexText),
            Compile(gl, ShaderType.FragmentShader, FragmentText) };
        foreach (var shader in shaders) gl.AttachShader(program, shader);
        gl.LinkProgram(program);
        foreach (var shader in shaders) gl.DeleteShader(shader);
        if (gl.GetProgram(program, ProgramPropertyARB.LinkStatus) == 0)
            throw new DrawingException(
                $"The driver does not take the screen's shaders: {gl.GetProgramInfoLog(program)}");
        return program;
    }

    private static uint Compile(GL gl, ShaderType type, string text)
    {
        var shader = gl.CreateShader(type);
        gl.ShaderSource(shader, text);
        gl.CompileShader(shader);
        if (gl.GetShader(shader, ShaderParameterName.CompileStatus) == 0)
            throw new DrawingException($"The driver does not take the screen's shaders: {gl.GetShaderInfoLog(shader)}");
        return shader;
    }
}
