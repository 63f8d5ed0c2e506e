using System.Numerics;

namespace CanopySim.Drawing.Views;

/// <summary>From where the canopy is looked at, in the usual ways.</summary>
public enum ViewPoint
{
    /// <summary>Standing in the alley, looking along the row.</summary>
    Along,

    /// <summary>From the alley to the right of the row, square to it. Rows in between are not drawn.</summary>
    Across,

    /// <summary>As the sun sees it; from above while the sun is down.</summary>
    Sun,

    /// <summary>From above, the row running upwards.</summary>
    Above,
}

/// <summary>
/// An eye that circles a target. Its angles are those of the eye seen from the target. It stays above the ground.
/// </summary>
public sealed class Camera
{
    // How far a pixel of the hand turns it [rad], how close to the ground it comes [m], how near and far it goes [m].
    private const float TurnPerPixel = 0.006f;
    private const float LeastHeight = 0.12f;
    private const float Nearest = 0.25f;
    private const float Farthest = 40;
    private const float Steepest = 1.55f;

    private readonly BlockShape _block;

    public Camera(BlockShape block)
    {
        _block = block;
        Show(ViewPoint.Along);
    }

    /// <summary>Angle of view upwards [rad].</summary>
    public float FieldOfView { get; private set; } = 0.61f;

    /// <summary>What it circles [m].</summary>
    public Vector3 Target { get; private set; }

    /// <summary>Direction of the eye seen from the target, clockwise from the row's direction (y) [rad].</summary>
    public float Azimuth { get; private set; }

    /// <summary>Height of the eye seen from the target [rad].</summary>
    public float Elevation { get; private set; }

    /// <summary>From target to eye [m].</summary>
    public float Distance { get; private set; }

    public Vector3 Eye => Target + (Distance * Outward(Azimuth, Elevation));

    /// <summary>Takes one of the usual views.</summary>
    /// <param name="view">Which.</param>
    /// <param name="sun">Towards the sun; null while it is down.</param>
    public void Show(ViewPoint view, Vector3? sun = null)
    {
        var (middle, along) = (0.55f * _block.Top, 0.5f * (float)_block.Cell.Along);
        if (view == ViewPoint.Sun && !(sun is { Z: > 0.02f })) view = ViewPoint.Above;
        switch (view)
        {
            case ViewPoint.Along:
                // The target lies down the row, so that the eye stands in the alley and the row runs out of the picture
                // beside it. Under a roof it stoops and looks up a little.
                var (side, height) = _block.HasRoof ? (0.5f, 0.58f * _block.Top)
                    : (0.57f, 1.04f * Math.Min(2, _block.Top));
                var inAlley = new Vector3(side * _block.RowSpacing, along - 4.2f, height);
                LookFrom(inAlley, new Vector3(0.16f * _block.RowSpacing, along + 1, _block.HasRoof ? 0.78f * _block.Top
                    : 0.95f * middle));
                break;
            case ViewPoint.Across:
                Place(new Vector3(0, along, middle), 0.5f * MathF.PI, 0.10f, 2.35f * Math.Max(2, _block.Top));
                break;
            case ViewPoint.Sun:
                var direction = Vector3.Normalize(sun!.Value);
                Place(
                    new Vector3(0, along, middle), MathF.Atan2(direction.X, direction.Y), MathF.Asin(direction.Z), 3.4f
                        * Math.Max(2, _block.Top));
                break;
            case ViewPoint.Above:
                Place(new Vector3(0, along, middle), MathF.PI, Steepest, 4 * Math.Max(2, _block.Top));
                break;
            default: throw new ArgumentOutOfRangeException(nameof(view), view, "no such view");
        }
    }

    /// <summary>Circles the target as the hand moves [px].</summary>
    public void Orbit(float right, float down)
    {
        Azimuth += TurnPerPixel * right;
        Elevation = Math.Clamp(Elevation + (TurnPerPixel * down), -1.2f, Steepest);
        StayAboveGround();
    }

    /// <summary>Moves what is seen with the hand [px].</summary>
    /// <param name="right">To the right.</param>
    /// <param name="down">Downwards.</param>
    /// <param name="height">Height of the picture.</param>
    public void Pan(float right, float down, int height)
    {
        var perPixel = 2 * Distance * MathF.Tan(0.5f * FieldOfView) / height;
        var outward = Outward(Azimuth, Elevation);
        var toRight = Vector3.Normalize(Vector3.Cross(Vector3.UnitZ, outward));
        var up = Vector3.Cross(outward, toRight);
        SetTarget(Target - (perPixel * right * toRight) + (perPixel * down * up));
        StayAboveGround();
    }

    /// <summary>Comes nearer by steps of a wheel, or goes away.</summary>
    public void Zoom(float steps)
    {
        Distance = Math.Clamp(Distance * MathF.Pow(0.88f, steps), Nearest, Farthest);
        StayAboveGround();
    }

    /// <summary>Circles a point from where it is, as to look at one leaf.</summary>
    public void LookAt(Vector3 target, float distance)
    {
        SetTarget(target);
        Distance = Math.Clamp(distance, Nearest, Farthest);
        StayAboveGround();
    }

    /// <summary>
    /// clipFromCell for vectors that are multiplied from the left, with depth from −1 to 1 as OpenGL has it.
    /// </summary>
    public Matrix4x4 ClipFromCell(int width, int height)
    {
        var (near, far) = (Math.Clamp(0.03f * Distance, 0.02f, 0.2f), 160f);
        var scale = 1 / MathF.Tan(0.5f * FieldOfView);
        var projection = new Matrix4x4(
            scale * height / width, 0, 0, 0,
            0, scale, 0, 0,
            0, 0, (far + near) / (near - far), -1,
            0, 0, 2 * far * near / (near - far), 0);
        return Matrix4x4.CreateLookAt(Eye, Target, Vector3.UnitZ) * projection;
    }

    /// <summary>Where a point is seen, in pixels from the upper left; null where it lies behind the eye.</summary>
    public Vector2? PixelOf(Vector3 point, int width, int height)
    {
        var clip = Vector4.Transform(new Vector4(point, 1), ClipFromCell(width, height));
        if (clip.W <= 0) return null;
        return new Vector2(0.5f * width * (1 + (clip.X / clip.W)), 0.5f * height * (1 - (clip.Y / clip.W)));
    }

    private static Vector3 Outward(float azimuth, float elevation)
    {
        var (sin, cos) = MathF.SinCos(azimuth);
        var (up, level) = MathF.SinCos(elevation);
        return new Vector3(level * sin, level * cos, up);
    }

    private void LookFrom(Vector3 eye, Vector3 target)
    {
        var outward = eye - target;
        var distance = outward.Length();
        Place(target, MathF.Atan2(outward.X, outward.Y), MathF.Asin(outward.Z / distance), distance);
    }

    // Heights of targets are over the ground.
    private void Place(Vector3 target, float azimuth, float elevation, float distance)
    {
        Target = target + new Vector3(0, 0, _block.GroundAt(target.X, target.Y));
        (Azimuth, Elevation, Distance) = (azimuth, Math.Min(elevation, Steepest), distance);
        StayAboveGround();
    }

    // The vineyard repeats: a target that leaves the cell comes in on its other side, and nobody sees it.
    private void SetTarget(Vector3 target)
    {
        var (across, along) = ((float)_block.Cell.Across, (float)_block.Cell.Along);
        var copies = _block.Offset((int)MathF.Floor((target.X / across) + 0.5f), (int)MathF.Floor(target.Y / along));
        target -= copies;
        var over = Math.Clamp(target.Z - _block.GroundAt(target.X, target.Y), 0, _block.Top + 1);
        Target = target with { Z = _block.GroundAt(target.X, target.Y) + over };
    }

    private void StayAboveGround()
    {
        for (var pass = 0; pass < 4; pass++)
        {
            var eye = Eye;
            var lowest = _block.GroundAt(eye.X, eye.Y) + LeastHeight;
            if (eye.Z >= lowest) return;
            Elevation = MathF.Asin(Math.Clamp((lowest - Target.Z) / Distance, -1, 1)) + 1e-4f;
        }
    }
}
