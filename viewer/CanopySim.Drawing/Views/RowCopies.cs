using System.Numerics;

namespace CanopySim.Drawing.Views;

/// <summary>
/// Which copies of the cell are in the picture, near ones first, and how plainly each may be drawn: the block has no
/// end, the picture does.
/// </summary>
internal sealed class RowCopies
{
    // A blade's width, by which detail is chosen [m], and the pixels it must have for each level of detail but the
    // last. Assumed.
    private const float BladeWidth = 0.12f;
    private static readonly float[] LeastPixels = [38, 19, 12, 8];

    private readonly List<Vector3>[] _levels = [.. LeastPixels.Select(_ => new List<Vector3>()), []];
    private readonly List<Vector3> _all = [];
    private readonly List<Vector3> _posts = [];
    private readonly List<(float Distance, Vector3 Offset, bool HasPost)> _seen = [];

    /// <summary>Offsets by level of detail, the nearest first.</summary>
    public IReadOnlyList<List<Vector3>> Levels => _levels;

    /// <summary>All of them.</summary>
    public List<Vector3> All => _all;

    /// <summary>Those whose row has a post.</summary>
    public List<Vector3> Posts => _posts;

    /// <summary>Finds them.</summary>
    /// <param name="block">How it repeats.</param>
    /// <param name="camera">The eye.</param>
    /// <param name="clip">clipFromCell; narrower than the picture where only a part of it is drawn.</param>
    /// <param name="low">Corner of the box that holds the canopy of the cell [m].</param>
    /// <param name="high">The other.</param>
    /// <param name="height">Pixels of the whole picture upwards.</param>
    /// <param name="reach">How far is seen [m].</param>
    /// <param name="plainest">The finest level that may be used.</param>
    public void Find(BlockShape block, Camera camera, in Matrix4x4 clip, Vector3 low, Vector3 high, int height,
        float reach, int plainest)
    {
        foreach (var level in _levels) level.Clear();
        _all.Clear();
        _posts.Clear();
        _seen.Clear();
        var eye = camera.Eye;
        var (middle, radius) = (0.5f * (low + high), 0.5f * (high - low).Length());
        var half = 0.5f * (high - low);
        Span<Vector4> planes = stackalloc Vector4[5];
        Planes(clip, planes);
        var (across, along) = ((float)block.Cell.Across, (float)block.Cell.Along);
        for (var i = (int)MathF.Floor((eye.X - reach) / across); i * across <= eye.X + reach; i++)
        {
            if (IsBetween(block, camera, i * across)) continue;
            for (var j = (int)MathF.Floor((eye.Y - reach) / along); j * along <= eye.Y + reach; j++)
            {
                var offset = block.Offset(i, j);
                var place = offset + middle;
                var distance = (place - eye).Length();
                if (distance - radius > reach || !Touches(planes, place, half)) continue;
                _seen.Add((distance, offset, j % block.CellsPerPost == 0));
            }
        }

        _seen.Sort((a, b) => a.Distance.CompareTo(b.Distance));
        var focal = 0.5f * height / MathF.Tan(0.5f * camera.FieldOfView);
        foreach (var (distance, offset, hasPost) in _seen)
        {
            var pixels = BladeWidth * focal / Math.Max(0.3f, distance - (0.5f * radius));
            var level = plainest;
            while (level < LeastPixels.Length && pixels < LeastPixels[level]) level++;
            _levels[level].Add(offset);
            _all.Add(offset);
            if (hasPost) _posts.Add(offset);
        }
    }

    // Rows that stand between the eye and its row hide it: they are left out where the line of sight passes through
    // them.
    private static bool IsBetween(BlockShape block, Camera camera, float x)
    {
        var (eye, target) = (camera.Eye, camera.Target);
        if (x == 0 || eye.X * x < 0 || Math.Abs(x) >= Math.Abs(eye.X) + (0.2f * block.RowSpacing)) return false;
        var share = (x - target.X) / (eye.X - target.X);
        var z = target.Z + (share * (eye.Z - target.Z)) - block.GroundAt(x, target.Y + (share * (eye.Y - target.Y)));
        return z < block.Top + 0.3f;
    }

    private static void Planes(in Matrix4x4 clip, Span<Vector4> planes)
    {
        var x = new Vector4(clip.M11, clip.M21, clip.M31, clip.M41);
        var y = new Vector4(clip.M12, clip.M22, clip.M32, clip.M42);
        var w = new Vector4(clip.M14, clip.M24, clip.M34, clip.M44);
        (planes[0], planes[1], planes[2], planes[3], planes[4]) = (w + x, w - x, w + y, w - y, w);
    }

    // A box is out where it lies wholly behind one of the planes.
    private static bool Touches(ReadOnlySpan<Vector4> planes, Vector3 middle, Vector3 half)
    {
        foreach (var plane in planes)
        {
            var normal = new Vector3(plane.X, plane.Y, plane.Z);
            if (Vector3.Dot(normal, middle) + plane.W < -Vector3.Dot(Vector3.Abs(normal), half)) return false;
        }

        return true;
    }
}
