using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>
/// Numbering of everything that exchanges light: two faces a surface (2 s: upper or outer; 2 s + 1: lower, or the inside of
/// a closed body, which absorbs what should not have come there), then strips of ground across the row.
/// </summary>
internal sealed class LightNodes
{
    private readonly bool[] _closed;

    public LightNodes(Scene scene, int groundStrips, int skyDirections)
    {
        _closed = Array.ConvertAll(scene.Kinds, kind => kind is SurfaceKind.Wood or SurfaceKind.Cluster);
        (Surfaces, GroundStrips, SkyDirections) = (scene.SurfaceCount, groundStrips, skyDirections);
    }

    public int Surfaces { get; }

    public int GroundStrips { get; }

    public int SkyDirections { get; }

    public int FirstGround => 2 * Surfaces;

    /// <summary>Faces and ground: nodes that send light on.</summary>
    public int Count => FirstGround + GroundStrips;

    public bool IsInside(int node) => node < FirstGround && (node & 1) == 1 && _closed[node >> 1];

    /// <summary>Ground strip under each column of a grid.</summary>
    public int[] StripsOfColumns(int width, float columnOffset)
    {
        var strips = new int[width];
        for (var column = 0; column < width; column++)
            strips[column] = Math.Min(GroundStrips - 1, (int)((column + columnOffset) * GroundStrips / width));
        return strips;
    }

    /// <summary>Node of the ground at a share, 0 to 1, of the way across the cell.</summary>
    public int GroundAt(double share) => FirstGround + Math.Min(GroundStrips - 1, (int)(share * GroundStrips));
}
