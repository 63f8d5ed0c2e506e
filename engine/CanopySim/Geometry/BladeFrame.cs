using System.Numerics;

namespace CanopySim.Geometry;

/// <summary>
/// A blade's place: petiole's end, midrib direction (v), right (u) and the upper side's normal (w), all in the cell's
/// frame.
/// </summary>
public readonly record struct BladeFrame(Vector3 Base, Vector3 Right, Vector3 Tip, Vector3 Normal)
{
    /// <summary>A point of the unit blade, scaled, in the cell's frame: cellFromBlade.</summary>
    public Vector3 CellFromBlade(Vector3 point, float scale) =>
        Base + (scale * ((point.X * Right) + (point.Y * Tip) + (point.Z * Normal)));
}
