using CanopySim.Geometry;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>
/// The room that a wall's foliage takes, as a tape laid over it measures: along the foliage and square to it the span
/// that leaves 2.5 % of the blades' area out at either end, so that a stray shoot does not count. Which share is left
/// out is assumed.
/// </summary>
/// <param name="Extent">Along the foliage: the height of an upright wall, the breadth of a roof [m].</param>
/// <param name="Thickness">Square to it [m].</param>
/// <param name="Length">Of the row in the cell [m].</param>
/// <param name="LeafArea">All of the wall's blades in the cell [m²].</param>
public readonly record struct WallBox(double Extent, double Thickness, double Length, double LeafArea)
{
    private const double LeftOutAtEnd = 0.025;

    /// <summary>Volume in the cell [m³].</summary>
    public double Volume => Extent * Thickness * Length;

    /// <summary>Measures a wall of a row; an empty one takes no room.</summary>
    /// <param name="placed">The canopy.</param>
    /// <param name="row">The row, which a blade belongs to wherever it reaches.</param>
    /// <param name="wall">The wall, one of the row's.</param>
    public static WallBox Of(PlacedCanopy placed, RowOfWalls row, FoliageWall wall)
    {
        var (scene, cell) = (placed.Scene, placed.Scene.Cell);
        // A roof lies on its wires as the ground lies.
        var (sin, cos) = Math.SinCos(wall.Tilt - (wall.IsFlat ? Math.Atan(cell.RiseAcross) : 0));
        var (along, square, areas) = (new List<double>(), new List<double>(), new List<double>());
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            var surface = scene.SurfaceOfTriangle[triangle];
            if (placed.Leaves[surface] is not { } leaf || leaf.Shoot.Wall != wall.Index
                || scene.RowOf(surface) != row.Number)
                continue;
            var center =
                (scene.Corners[3 * triangle] + scene.Corners[(3 * triangle) + 1] + scene.Corners[(3 * triangle) + 2])
                / 3;
            var (x, z) =
                (center.X - row.Across, center.Z - (cell.RiseAlong * center.Y) - (cell.RiseAcross * row.Across));
            along.Add((sin * x) + (cos * z));
            square.Add((cos * x) - (sin * z));
            areas.Add(scene.TriangleArea(triangle));
        }

        return new WallBox(Span(along, areas), Span(square, areas), cell.Along, areas.Sum());
    }

    private static double Span(List<double> places, List<double> areas)
    {
        if (places.Count == 0) return 0;
        var (sorted, weights) = (places.ToArray(), areas.ToArray());
        Array.Sort(sorted, weights);
        var leftOut = LeftOutAtEnd * weights.Sum();
        var (low, high) = (0, sorted.Length - 1);
        for (var passed = weights[low]; passed <= leftOut && low < high; passed += weights[low]) low++;
        for (var passed = weights[high]; passed <= leftOut && high > low; passed += weights[high]) high--;
        return sorted[high] - sorted[low];
    }
}
