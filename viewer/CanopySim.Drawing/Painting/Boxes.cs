using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Drawing.Painting;

/// <summary>Level boxes around what is drawn.</summary>
internal static class Boxes
{
    public static (Vector3 Low, Vector3 High) Of(ReadOnlySpan<Vector3> points)
    {
        var (low, high) = (new Vector3(float.MaxValue), new Vector3(float.MinValue));
        foreach (var point in points) (low, high) = (Vector3.Min(low, point), Vector3.Max(high, point));
        return points.IsEmpty ? (Vector3.Zero, Vector3.One) : (low, high);
    }

    /// <summary>Around wood and what grew on it.</summary>
    public static (Vector3 Low, Vector3 High) Of((Vector3 Low, Vector3 High) wood, DrawnCanopy canopy)
    {
        var (low, high) = wood;
        foreach (var stalk in canopy.Stalks)
            (low, high) = (Vector3.Min(low, Vector3.Min(stalk.From, stalk.To)),
                Vector3.Max(high, Vector3.Max(stalk.From, stalk.To)));
        foreach (var blade in canopy.Blades)
        {
            // The tip is the farthest corner of a blade: its length over the root of its area is less than 1.3.
            var reach = new Vector3(1.3f * MathF.Sqrt(blade.Area));
            (low, high) = (Vector3.Min(low, blade.Frame.Base - reach), Vector3.Max(high, blade.Frame.Base + reach));
        }

        foreach (var cluster in canopy.Clusters) low =
            Vector3.Min(low, cluster.Top - new Vector3(cluster.Radius, cluster.Radius, cluster.Length));
        return (low, high);
    }
}

/// <summary>Mixed colors.</summary>
internal static class Colors
{
    /// <summary>From one color to another by a share, 0xRRGGBB.</summary>
    public static uint Mix(uint from, uint to, float share)
    {
        return (Part(16) << 16) | (Part(8) << 8) | Part(0);

        uint Part(int shift)
        {
            var (a, b) = ((byte)(from >> shift), (byte)(to >> shift));
            return (uint)Math.Clamp(MathF.Round(a + (Math.Clamp(share, 0, 1) * (b - a))), 0, 255);
        }
    }
}
