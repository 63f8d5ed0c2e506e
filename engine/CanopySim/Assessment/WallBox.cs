using CanopySim.Geometry;
using CanopySim.Training;

namespace CanopySim.Assessment;

/// <summary>
/// The room that a wall's foliage takes, as a tape laid over it measures: along the foliage and square to it the span that leaves
/// 2.5 % of the blades' area out at either end, so that a stray shoot does not count. Which share is left out is assumed.
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

    /// <summary>Measures a wall; an empty one takes no room.</summary>
    public static WallBox Of(PlacedCanopy placed, FoliageWall wall)
    {
        var scene = placed.Scene;
        var (sin, cos) = Math.SinCos(wall.Tilt);
        List<(double Place, double Area)> along = [], square = [];
        for (var triangle = 0; triangle < scene.TriangleCount; triangle++)
        {
            if (placed.Leaves[scene.SurfaceOfTriangle[triangle]] is not { } leaf || leaf.Shoot.Wall != wall.Index) continue;
            var center = (scene.Corners[3 * triangle] + scene.Corners[(3 * triangle) + 1] + scene.Corners[(3 * triangle) + 2]) / 3;
            var (x, z, area) = (center.X, center.Z - (scene.Cell.RiseAlong * center.Y), scene.TriangleArea(triangle));
            along.Add(((sin * x) + (cos * z), area));
            square.Add(((cos * x) - (sin * z), area));
        }

        return new WallBox(Span(along), Span(square), scene.Cell.Along, along.Sum(at => at.Area));
    }

    private static double Span(List<(double Place, double Area)> places)
    {
        if (places.Count == 0) return 0;
        places.Sort();
        var leftOut = LeftOutAtEnd * places.Sum(at => at.Area);
        return At(Enumerable.Reverse(places)) - At(places);

        double At(IEnumerable<(double Place, double Area)> fromEnd)
        {
            var passed = 0.0;
            foreach (var (place, area) in fromEnd)
            {
                passed += area;
                if (passed > leftOut) return place;
            }

            return places[^1].Place;
        }
    }
}
