using System.Numerics;
using CanopySim.Drawing.Views;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// The sun's shadows of the whole vineyard in a map of one cell: points are laid down along the sun's rays to the
/// ground, where the block repeats, and so a map that repeats holds the nearest to the sun of all copies.
/// </summary>
internal sealed class ShadowMap : IDisposable
{
    // A point of the map [m], and the most it has each way.
    private const double Texel = 0.002;
    private const int Most = 2048;
    private const int Least = 256;

    /// <summary>
    /// A sun that climbs less than this, sine over the ground, casts no shadows: they would reach over the whole block.
    /// </summary>
    public const float LeastClimb = 0.05f;

    private readonly GL _gl;
    private readonly uint _framebuffer;
    private uint _texture;
    private int _width;
    private int _height;

    public ShadowMap(GL gl)
    {
        _gl = gl;
        _framebuffer = gl.GenFramebuffer();
    }

    /// <summary>How much a sun climbs for each meter along its rays, over the ground [m].</summary>
    public static float Climb(BlockShape block, Vector3 sun) =>
        sun.Z - (float)((block.Cell.RiseAcross * sun.X) + (block.Cell.RiseAlong * sun.Y));

    /// <summary>Binds the map for reading.</summary>
    public void BindTexture()
    {
        _gl.ActiveTexture(TextureUnit.Texture0 + SceneUniforms.ShadowUnit);
        _gl.BindTexture(TextureTarget.Texture2D, _texture);
    }

    /// <summary>Makes the map ready to be drawn into, empty.</summary>
    public void Begin(BlockShape block)
    {
        var (width, height) = (SizeFor(block.Cell.Across), SizeFor(block.Cell.Along));
        if (width != _width || height != _height) Make(width, height);
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        _gl.Viewport(0, 0, (uint)_width, (uint)_height);
        _gl.Clear(ClearBufferMask.DepthBufferBit);
    }

    /// <summary>Copies of the cell that cast into the map.</summary>
    /// <param name="block">How it repeats.</param>
    /// <param name="sun">Towards the sun.</param>
    /// <param name="low">Corner of the box that holds the canopy of the cell [m].</param>
    /// <param name="high">The other.</param>
    public static List<Vector3> Copies(BlockShape block, Vector3 sun, Vector3 low, Vector3 high)
    {
        var (least, most) = (new Vector2(float.MaxValue), new Vector2(float.MinValue));
        var climb = Climb(block, sun);
        for (var corner = 0; corner < 8; corner++)
        {
            var point = new Vector3((corner & 1) == 0 ? low.X : high.X, (corner & 2) == 0 ? low.Y : high.Y,
                (corner & 4) == 0 ? low.Z : high.Z);
            var away = (point.Z - block.GroundAt(point.X, point.Y)) / climb;
            var foot = new Vector2(
                (point.X - (sun.X * away)) / (float)block.Cell.Across, (point.Y - (sun.Y * away))
                    / (float)block.Cell.Along);
            (least, most) = (Vector2.Min(least, foot), Vector2.Max(most, foot));
        }

        List<Vector3> copies = [];
        for (var i = (int)MathF.Ceiling(-most.X); i <= 1 - least.X; i++)
        {
            for (var j = (int)MathF.Ceiling(-most.Y); j <= 1 - least.Y; j++) copies.Add(block.Offset(i, j));
        }

        return copies;
    }

    public void Dispose()
    {
        _gl.DeleteFramebuffer(_framebuffer);
        if (_texture != 0) _gl.DeleteTexture(_texture);
    }

    private static int SizeFor(double meters) => Math.Clamp((int)(meters / Texel), Least, Most);

    private unsafe void Make(int width, int height)
    {
        (_width, _height) = (width, height);
        if (_texture != 0) _gl.DeleteTexture(_texture);
        _texture = _gl.GenTexture();
        BindTexture();
        const TextureTarget Target = TextureTarget.Texture2D;
        _gl.TexImage2D(
            Target, 0, InternalFormat.DepthComponent24, (uint)width, (uint)height, 0, PixelFormat.DepthComponent,
                PixelType.UnsignedInt, null);
        _gl.TexParameter(Target, TextureParameterName.TextureMinFilter, (int)GLEnum.Nearest);
        _gl.TexParameter(Target, TextureParameterName.TextureMagFilter, (int)GLEnum.Nearest);
        _gl.TexParameter(Target, TextureParameterName.TextureWrapS, (int)GLEnum.Repeat);
        _gl.TexParameter(Target, TextureParameterName.TextureWrapT, (int)GLEnum.Repeat);
        _gl.TexParameter(Target, TextureParameterName.TextureCompareMode, (int)GLEnum.CompareRefToTexture);
        _gl.TexParameter(Target, TextureParameterName.TextureCompareFunc, (int)GLEnum.Lequal);
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        _gl.FramebufferTexture2D(FramebufferTarget.Framebuffer, FramebufferAttachment.DepthAttachment, Target,
            _texture, 0);
        _gl.DrawBuffer(DrawBufferMode.None);
        _gl.ReadBuffer(ReadBufferMode.None);
    }
}
