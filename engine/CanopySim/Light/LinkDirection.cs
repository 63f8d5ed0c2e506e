using System.Numerics;
using CanopySim.Geometry;

namespace CanopySim.Light;

/// <summary>One direction of the sky as links are traced along it.</summary>
/// <param name="Index">Its place in the list.</param>
/// <param name="Upwards">Its end that rises over the slope.</param>
/// <param name="Pixel">Edge of a pixel square to it [m].</param>
internal readonly record struct LinkDirection(int Index, Vector3 Upwards, double Pixel)
{
    // Sample points move from direction to direction by the golden ratio and its square, lest edges that lie on pixel borders
    // be counted the same way every time.
    public float ColumnOffset => (float)Fraction(0.5 + (Index * 0.6180339887498949));

    public float RowOffset => (float)Fraction(0.5 + (Index * 0.7548776662466927));

    /// <summary>Directions whose line rises over the slope at all.</summary>
    public static LinkDirection[] All(in Cell cell, IReadOnlyList<Vector3> directions, double pixel)
    {
        var result = new List<LinkDirection>(directions.Count);
        for (var index = 0; index < directions.Count; index++)
        {
            var direction = directions[index];
            var vertical = ProjectedGrid.VerticalOf(cell, direction);
            if (Math.Abs(vertical) < 1e-6) continue;
            result.Add(new LinkDirection(index, vertical > 0 ? direction : -direction, pixel));
        }

        return [.. result];
    }

    private static double Fraction(double value) => value - Math.Floor(value);
}
