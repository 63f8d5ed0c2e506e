using System.Numerics;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Views;
using Silk.NET.OpenGL;

namespace CanopySim.Drawing.Painting;

/// <summary>
/// The sun's way through the day as an arc over the target, with full hours on it, the sun's disc, and on the ground
/// below a ring that carries the arrow to the north. A drawing of directions: it is as large as the picture asks for,
/// not as far away as the sun.
/// </summary>
internal sealed class SkyMarks : IDisposable
{
    private const int RingPoints = 96;

    private readonly GL _gl;
    private readonly VertexBuffer _corners;
    private readonly uint _array;
    private readonly List<Vector3> _points = [];

    public SkyMarks(GL gl)
    {
        (_gl, _corners, _array) = (gl, new VertexBuffer(gl), gl.GenVertexArray());
        gl.BindVertexArray(_array);
        VertexAttributes.Set(gl, _corners, 0, 3, 3, 0);
        gl.BindVertexArray(0);
    }

    /// <summary>Middle of the ring, on the ground below the target.</summary>
    public static Vector3 MiddleOf(BlockShape block, Camera camera) =>
        camera.Target with { Z = block.GroundAt(camera.Target.X, camera.Target.Y) };

    /// <summary>Radius of ring and arc: within the picture, but outside the row [m].</summary>
    public static float RadiusOf(BlockShape block, Camera camera) =>
        Math.Max(1.25f * block.Top, 0.72f * camera.Distance * MathF.Tan(0.5f * camera.FieldOfView));

    /// <summary>Where the arrow to the north ends.</summary>
    public static Vector3 NorthTip(BlockShape block, Camera camera) => OnGround(block, camera, 0, 1.1f);

    /// <summary>Draws path, disc and arrow.</summary>
    /// <param name="program">Plain color.</param>
    /// <param name="block">The block.</param>
    /// <param name="camera">The eye.</param>
    /// <param name="path">Where the sun goes.</param>
    /// <param name="sun">Where it stands; null while it is down.</param>
    /// <param name="theme">Colors.</param>
    /// <param name="height">Pixels of the picture upwards.</param>
    public void Draw(
        ShaderProgram program, BlockShape block, Camera camera, IReadOnlyList<SunPathPoint> path, Vector3? sun,
            SceneTheme theme, int height)
    {
        var (middle, radius) = (MiddleOf(block, camera), RadiusOf(block, camera));
        var perPixel = 2 * MathF.Tan(0.5f * camera.FieldOfView) / height;
        _gl.Enable(EnableCap.Blend);
        _gl.BlendFunc(BlendingFactor.SrcAlpha, BlendingFactor.OneMinusSrcAlpha);
        _gl.DepthMask(false);
        _points.Clear();
        for (var i = 0; i < RingPoints; i++)
            AddLine(OnGround(block, camera, 2 * MathF.PI * i / RingPoints, 1),
                OnGround(block, camera, 2 * MathF.PI * (i + 1) / RingPoints, 1), 0.7f);
        AddArrow(block, camera);
        for (var i = 1; i < path.Count; i++)
        {
            // A day that passes midnight has a gap in its path.
            if (path[i].Hour - path[i - 1].Hour > 0.5) continue;
            AddLine(middle + (radius * path[i - 1].Direction), middle + (radius * path[i].Direction), 0.9f);
        }

        foreach (var (hour, direction) in path)
        {
            if (hour == Math.Round(hour)) AddDisc(middle + (radius * direction), hour % 3 == 0 ? 4f : 2.4f);
        }

        Flush(theme.SunPath);
        if (sun is { } towards)
        {
            var size = 0.045f * radius
                / (perPixel * Math.Max(0.1f, (middle + (radius * towards) - camera.Eye).Length()));
            AddDisc(middle + (radius * towards), Math.Clamp(size, 8, 26));
            Flush(theme.Sun);
        }

        _gl.DepthMask(true);
        _gl.Disable(EnableCap.Blend);

        void AddLine(Vector3 from, Vector3 to, float halfPixels)
        {
            var side = Vector3.Cross(to - from, camera.Eye - from);
            if (side.LengthSquared() < 1e-12f) return;
            side = Vector3.Normalize(side) * (halfPixels * perPixel);
            var (a, b) = (side * (camera.Eye - from).Length(), side * (camera.Eye - to).Length());
            _points.AddRange([from - a, from + a, to + b, from - a, to + b, to - b]);
        }

        void AddDisc(Vector3 at, float pixels)
        {
            var outward = Vector3.Normalize(camera.Eye - at);
            var right = Vector3.Normalize(
                Vector3.Cross(MathF.Abs(outward.Z) < 0.99f ? Vector3.UnitZ : Vector3.UnitY, outward));
            var up = Vector3.Cross(outward, right);
            var size = pixels * perPixel * (camera.Eye - at).Length();
            for (var i = 0; i < 20; i++) _points.AddRange([at, Rim(i), Rim(i + 1)]);

            Vector3 Rim(int i)
            {
                var (sin, cos) = MathF.SinCos(MathF.PI * i / 10);
                return at + (size * ((cos * right) + (sin * up)));
            }
        }

        // What stands in front hides it nearly, not wholly: a path that breaks off behind a row is hard to follow.
        void Flush(uint rgb)
        {
            _corners.Upload<Vector3>(_points.ToArray());
            _points.Clear();
            _gl.BindVertexArray(_array);
            var color = ColorVector.Of(rgb);
            program.Set("uColor", new Vector4(color, 0.22f));
            _gl.Disable(EnableCap.DepthTest);
            _gl.DrawArrays(PrimitiveType.Triangles, 0, (uint)_corners.Count);
            program.Set("uColor", new Vector4(color, 0.9f));
            _gl.Enable(EnableCap.DepthTest);
            _gl.DrawArrays(PrimitiveType.Triangles, 0, (uint)_corners.Count);
        }
    }

    public void Dispose()
    {
        _corners.Dispose();
        _gl.DeleteVertexArray(_array);
    }

    // A point over the ground's ring, clockwise from north [rad], at a share of the radius, a hand's breadth above the
    // earth.
    private static Vector3 OnGround(BlockShape block, Camera camera, float azimuth, float share)
    {
        var at = MiddleOf(block, camera) + (share * RadiusOf(block, camera) * block.Towards(azimuth));
        return at with { Z = block.GroundAt(at.X, at.Y) + 0.02f };
    }

    private void AddArrow(BlockShape block, Camera camera)
    {
        // A head on the ring, pointing outwards.
        var (tip, left, right, notch) = (OnGround(block, camera, 0, 1.12f), OnGround(block, camera, -0.07f, 0.93f),
            OnGround(block, camera, 0.07f, 0.93f), OnGround(block, camera, 0, 0.975f));
        _points.AddRange([tip, left, notch, tip, notch, right]);
    }
}
