using System.Numerics;

namespace CanopySim.Geometry;

/// <summary>
/// The periodic piece of vineyard that repeats in both directions without end. x points across the row, y along the row
/// (the row azimuth), z up; x is 90° clockwise from y seen from above. A slope lifts the ground by
/// <see cref="RiseAcross"/> and <see cref="RiseAlong"/> per metre; the lattice vectors lie in that plane.
/// </summary>
/// <param name="Across">Row spacing, or a whole number of it [m, horizontal].</param>
/// <param name="Along">Length of row in the cell [m, horizontal].</param>
/// <param name="RiseAcross">Ground's rise per metre of x.</param>
/// <param name="RiseAlong">Ground's rise per metre of y.</param>
public readonly record struct Cell(double Across, double Along, double RiseAcross = 0, double RiseAlong = 0)
{
    /// <summary>Horizontal ground area [m²].</summary>
    public double GroundArea => Across * Along;
}

/// <summary>What a surface is made of, and so how light meets it.</summary>
public enum SurfaceKind
{
    /// <summary>A leaf blade: both sides, reflects and transmits.</summary>
    Blade,

    /// <summary>Shoot axes, cordon, trunk, posts: closed, opaque, lit from outside.</summary>
    Wood,

    /// <summary>A cluster: closed, opaque, lit from outside.</summary>
    Cluster,

    /// <summary>Strips that stand for thin round stalks of the vine: wood, opaque, lit from both sides.</summary>
    Stalk,
}

/// <summary>
/// Triangles of the cell in flat arrays, grouped into surfaces: one surface a blade, one for each piece of wood or
/// cluster, one for the stalks of a shoot. Triangles may reach over the cell's edges; whoever traces light wraps them.
/// Right-handed order seen from a blade's upper side or from outside a closed body.
/// </summary>
public sealed class Scene
{
    public required Cell Cell { get; init; }

    /// <summary>Corners [m], three a triangle: corner c of triangle t is at index 3 t + c.</summary>
    public required Vector3[] Corners { get; init; }

    /// <summary>Surface of each triangle.</summary>
    public required int[] SurfaceOfTriangle { get; init; }

    /// <summary>Kind of each surface.</summary>
    public required SurfaceKind[] Kinds { get; init; }

    /// <summary>Leaf of each surface; −1 for wood and clusters, as <c>scene.ply</c> writes it.</summary>
    public required int[] LeafIds { get; init; }

    /// <summary>Number of the row to which each surface belongs, from 0; empty where there is but one row.</summary>
    public int[] Rows { get; init; } = [];

    /// <summary>Number of the row to which a surface belongs, wherever it reaches.</summary>
    public int RowOf(int surface) => Rows.Length > 0 ? Rows[surface] : 0;

    /// <summary>Rows of the cell.</summary>
    public int RowCount => Rows.Length > 0 ? Rows.Max() + 1 : 1;

    public int TriangleCount => SurfaceOfTriangle.Length;

    public int SurfaceCount => Kinds.Length;

    /// <summary>One-sided area of each surface, the sum of its triangles [m²].</summary>
    public double[] SurfaceAreas()
    {
        var areas = new double[SurfaceCount];
        for (var triangle = 0; triangle < TriangleCount; triangle++)
            areas[SurfaceOfTriangle[triangle]] += TriangleArea(triangle);
        return areas;
    }

    /// <summary>Area of a triangle [m²].</summary>
    public double TriangleArea(int triangle)
    {
        var (a, b, c) = (Corners[3 * triangle], Corners[(3 * triangle) + 1], Corners[(3 * triangle) + 2]);
        return 0.5 * Vector3.Cross(b - a, c - a).Length();
    }
}
