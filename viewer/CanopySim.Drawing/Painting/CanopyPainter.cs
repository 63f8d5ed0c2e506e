using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Leaves;
using CanopySim.Drawing.Views;
using CanopySim.Geometry;
using CanopySim.Training;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// Draws a canopy as an endless vineyard: blades colored by what the reader chose, in the sun of the hour. Tell it what
/// has changed, then draw; nothing is drawn by itself. It belongs to the thread of its context. Colors of blades are
/// shaded to no less than three quarters.
/// </summary>
public sealed partial class CanopyPainter : IDisposable
{
    // The haze that ends the vineyard begins and ends so far away, or so many times as far as the target [m].
    private const float HazeFrom = 11;
    private const float HazeTo = 26;
    private const float HazeToDistances = 2.6f;

    // Half width of a shadow's edge: the sun's 0.53° over a meter or so [m].
    private const float Penumbra = 0.008f;

    // Stalks thinner than this are drawn near the eye only: petioles and laterals [m].
    private const float Thin = 0.0018f;

    private const float WireRadius = 0.0014f;
    private const float PostRadius = 0.03f;
    private const float ArmRadius = 0.018f;
    private const int CopiesAtOnce = 128;

    private readonly GL _gl;
    private readonly Programs _programs;
    private readonly LeafLayer _leaves;
    private readonly StalkLayer _stalks;
    private readonly StalkLayer _wires;
    private readonly StalkLayer _posts;
    private readonly SolidLayer _wood;
    private readonly ClusterLayer _clusters;
    private readonly GroundLayer _ground;
    private readonly SkyMarks _marks;
    private readonly ShadowMap _shadow;
    private readonly RenderTarget _fine;
    private readonly RenderTarget _still;
    private readonly RenderTarget _quick;
    private readonly EdgeSmoothing _smoothing;
    private readonly LeafPicker _picker;
    private readonly RowCopies _copies = new();
    private readonly uint _table;
    private BlockShape? _block;
    private (Vector3 Low, Vector3 High) _box;
    private (Vector3 Low, Vector3 High) _woodBox;
    private Vector3? _sun;
    private IReadOnlyList<SunPathPoint> _path = [];
    private float _ripeness;
    private bool _isShadowOld = true;
    private Vector3? _shadowSun;
    private (Camera Camera, int Width, int Height)? _drawn;

    /// <param name="context">Current on this thread.</param>
    /// <exception cref="DrawingException">The driver lacks what is needed.</exception>
    public CanopyPainter(IGlContext context)
    {
        _gl = context.Gl;
        _programs = new Programs(_gl);
        _leaves = new LeafLayer(_gl);
        (_stalks, _wires, _posts) = (new StalkLayer(_gl), new StalkLayer(_gl), new StalkLayer(_gl));
        (_wood, _clusters, _ground, _marks) =
            (new SolidLayer(_gl), new ClusterLayer(_gl), new GroundLayer(_gl), new SkyMarks(_gl));
        _shadow = new ShadowMap(_gl);
        (_fine, _still, _quick) = (new RenderTarget(_gl, 4), new RenderTarget(_gl, 0), new RenderTarget(_gl, 0));
        _smoothing = new EdgeSmoothing(_gl);
        _picker = new LeafPicker(_gl);
        _table = _gl.GenTexture();
        GlErrors.Check(_gl, "getting ready");
    }

    public SceneTheme Theme { get; set; } = SceneTheme.Light;

    /// <summary>Number of the blade that is lifted out; −1 for none.</summary>
    public int SelectedLeaf { get; set; } = -1;

    /// <summary>False draws blades in the very colors of the table.</summary>
    public bool IsShaded { get; set; } = true;

    /// <summary>Whether the sun's path and the arrow to the north are drawn.</summary>
    public bool ShowsSunPath { get; set; } = true;

    /// <summary>How often the shadow map was drawn: only where canopy or sun had changed.</summary>
    public int ShadowsDrawn { get; private set; }

    /// <summary>The block, with what stays as it is all season: wood, wires and posts.</summary>
    public void SetBlock(Scenario scenario)
    {
        _block = BlockShape.Of(scenario);
        var wood = new CanopyScene(scenario).DrawWood(VinePlanting.Plant(scenario));
        _wood.Set(wood);
        _wires.Set(TrellisShapes.Wires(scenario, WireRadius));
        _posts.Set(TrellisShapes.Posts(scenario, PostRadius, ArmRadius));
        _woodBox = Boxes.Of(wood.Corners);
        SetCanopy(new DrawnCanopy([], [], []), 0);
    }

    /// <summary>What has grown. Shares of another canopy no longer hold: set them next.</summary>
    /// <param name="canopy">Blades, stalks and clusters.</param>
    /// <param name="ripeness">Of fruit and shoots: 0 green, 1 colored.</param>
    public void SetCanopy(DrawnCanopy canopy, float ripeness)
    {
        _leaves.SetBlades(canopy.Blades);
        _leaves.SetShares(Enumerable.Repeat(LeafColoring.NoValue, canopy.Blades.Count).ToArray());
        _stalks.Set(canopy.Stalks);
        _clusters.Set(canopy.Clusters);
        _box = Boxes.Of(_woodBox, canopy);
        _ripeness = ripeness;
        _isShadowOld = true;
        if (SelectedLeaf >= canopy.Blades.Count) SelectedLeaf = -1;
    }

    /// <summary>What blades show.</summary>
    /// <param name="shares">For each blade its place in the table, 0 to 1; <see cref="LeafColoring.NoValue"/> for
    /// none.</param>
    /// <param name="table">256 colors, 0xRRGGBB.</param>
    public void SetShares(float[] shares, uint[] table)
    {
        if (shares.Length != _leaves.Count)
            throw new ArgumentException($"{shares.Length} shares for {_leaves.Count} blades", nameof(shares));
        _leaves.SetShares(shares);
        BindTable();
        var bytes = new byte[4 * table.Length];
        for (var i = 0; i < table.Length; i++)
            (bytes[4 * i], bytes[(4 * i) + 1], bytes[(4 * i) + 2], bytes[(4 * i) + 3]) =
                ((byte)(table[i] >> 16), (byte)(table[i] >> 8), (byte)table[i], 255);
        _gl.TexImage2D<byte>(
            TextureTarget.Texture2D, 0, InternalFormat.Rgba8, (uint)table.Length, 1, 0, PixelFormat.Rgba,
                PixelType.UnsignedByte, bytes);
        _gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMinFilter, (int)GLEnum.Nearest);
        _gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMagFilter, (int)GLEnum.Nearest);
    }

    /// <summary>Where the sun stands and goes.</summary>
    /// <param name="direction">Unit vector towards it; null while it is down.</param>
    /// <param name="path">The day's path.</param>
    public void SetSun(Vector3? direction, IReadOnlyList<SunPathPoint> path)
    {
        (_sun, _path) = (direction is { Z: > 0 } ? direction : null, path);
        _isShadowOld |= _sun != _shadowSun;
    }

    /// <summary>Draws into the lower left of a framebuffer.</summary>
    /// <param name="camera">The eye.</param>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels upwards.</param>
    /// <param name="fineness">How carefully.</param>
    /// <param name="framebuffer">Which; 0 is a window's.</param>
    /// <exception cref="DrawingException">The driver reports an error.</exception>
    public void Draw(Camera camera, int width, int height, Fineness fineness, uint framebuffer)
    {
        var block = Block;
        _drawn = (camera, width, height);
        if (_isShadowOld && (fineness != Fineness.Moving || _shadowSun is null)) DrawShadows(block);
        var isStill = fineness != Fineness.Moving;
        var target = fineness switch
        {
            Fineness.Moving => _quick,
            Fineness.Still => _still,
            _ => _fine,
        };
        var (w, h) = isStill ? (width, height) : (Math.Max(1, (width + 1) / 2), Math.Max(1, (height + 1) / 2));
        target.Bind(w, h);
        _gl.Viewport(0, 0, (uint)w, (uint)h);
        var surface = ColorVector.Of(Theme.Surface);
        _gl.ClearColor(surface.X, surface.Y, surface.Z, 1);
        _gl.Clear(ClearBufferMask.ColorBufferBit | ClearBufferMask.DepthBufferBit);
        DrawScene(block, camera, w, h, isStill);
        if (fineness == Fineness.Still) _smoothing.Lay(_still, framebuffer);
        else Copy(target, framebuffer, width, height, isStill ? BlitFramebufferFilter.Nearest
            : BlitFramebufferFilter.Linear);
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, framebuffer);
        _gl.Viewport(0, 0, (uint)width, (uint)height);
        _gl.BindVertexArray(0);
        _gl.UseProgram(0);
        _gl.Disable(EnableCap.DepthTest);
        GlErrors.Check(_gl, "drawing the canopy");
    }

    /// <summary>
    /// The blade at a pixel of the picture drawn last, counted from the upper left; −1 where there is none.
    /// </summary>
    public int LeafAt(int x, int y)
    {
        if (_drawn is not var (camera, width, height) || x < 0 || y < 0 || x >= width || y >= height) return -1;
        var block = Block;
        var clip = camera.ClipFromCell(width, height) * LeafPicker.Narrowed(x, y, width, height);
        _picker.Begin();
        _leaves.Bind();
        var uniforms = Uniforms(block, camera, clip, isStill: false);
        FindCopies(block, camera, clip, height, plainest: 0);
        DrawLeaves(uniforms, _programs.LeafIdentity);
        _gl.ColorMask(false, false, false, false);
        DrawStalks(uniforms, _programs.StalkDepth, height);
        DrawWood(uniforms, _programs.SolidDepth);
        DrawClusters(uniforms, _programs.ClusterDepth);
        _gl.ColorMask(true, true, true, true);
        var blade = _picker.Read();
        _gl.Disable(EnableCap.DepthTest);
        _gl.BindVertexArray(0);
        _gl.UseProgram(0);
        GlErrors.Check(_gl, "looking for a leaf");
        return blade;
    }

    public void Dispose()
    {
        _programs.Dispose();
        foreach (var layer in new IDisposable[] { _leaves, _stalks, _wires, _posts, _wood, _clusters, _ground, _marks,
            _shadow, _fine, _still, _quick, _smoothing, _picker })
            layer.Dispose();
        _gl.DeleteTexture(_table);
    }

    private BlockShape Block =>
        _block ?? throw new InvalidOperationException("A block must be set before anything is drawn.");

    private float SunStrength(BlockShape block, Vector3? sun)
    {
        if (sun is not { } direction) return 0;
        var climb = ShadowMap.Climb(block, direction);
        return Math.Clamp((climb - ShadowMap.LeastClimb) / ShadowMap.LeastClimb, 0, 1);
    }

    private SceneUniforms Uniforms(BlockShape block, Camera camera, in Matrix4x4 clip, bool isStill)
    {
        var to = Math.Max(HazeTo, HazeToDistances * camera.Distance);
        return new SceneUniforms
        {
            Clip = clip,
            Eye = camera.Eye,
            Sun = _shadowSun ?? Vector3.UnitZ,
            SunStrength = SunStrength(block, _shadowSun),
            Block = block,
            Heights = Heights(block),
            Haze = Theme.Surface,
            HazeRange = new Vector2(HazeFrom / HazeTo * to, to),
            Penumbra = isStill ? Penumbra : 0,
        };
    }

    private Vector2 Heights(BlockShape block)
    {
        // The box is level, the ground may slope below it.
        var slope = (MathF.Abs((float)block.Cell.RiseAcross) * (_box.High.X - _box.Low.X))
            + (MathF.Abs((float)block.Cell.RiseAlong) * (_box.High.Y - _box.Low.Y));
        return new Vector2(_box.High.Z + slope + 0.1f, Math.Min(0, _box.Low.Z) - slope - 0.1f);
    }

    private void Copy(RenderTarget from, uint framebuffer, int width, int height, BlitFramebufferFilter filter)
    {
        _gl.BindFramebuffer(FramebufferTarget.ReadFramebuffer, from.Handle);
        _gl.BindFramebuffer(FramebufferTarget.DrawFramebuffer, framebuffer);
        _gl.BlitFramebuffer(0, 0, from.Width, from.Height, 0, 0, width, height, ClearBufferMask.ColorBufferBit, filter);
    }

    private void BindTable()
    {
        _gl.ActiveTexture(TextureUnit.Texture0 + SceneUniforms.TableUnit);
        _gl.BindTexture(TextureTarget.Texture2D, _table);
    }

    private static IEnumerable<ReadOnlyMemory<Vector3>> Chunks(List<Vector3> copies)
    {
        if (copies.Count == 0) yield break;
        var all = copies.ToArray();
        for (var from = 0; from < all.Length; from += CopiesAtOnce)
            yield return all.AsMemory(from, Math.Min(CopiesAtOnce, all.Length - from));
    }
}
