using CanopySim.Numerics;

namespace CanopySim.Sampling;

/// <summary>
/// A Latin hypercube: every coordinate has one point in each of n equal shares of [0, 1), at a random place in it, the shares of the
/// coordinates paired at random. McKay, Beckman &amp; Conover 1979, doi:10.1080/00401706.1979.10489755.
/// </summary>
public static class LatinHypercube
{
    /// <summary>The points, [point][dimension] in [0, 1); the same bits for the same seed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No point or no dimension.</exception>
    public static double[][] Points(int count, int dimensions, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(count);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dimensions);
        var points = new double[count][];
        for (var point = 0; point < count; point++) points[point] = new double[dimensions];
        for (var dimension = 0; dimension < dimensions; dimension++)
        {
            var shares = Shuffle.Order(count, seed, "latin hypercube order", dimension);
            for (var point = 0; point < count; point++)
            {
                var place = SeededValue.Uniform(seed, "latin hypercube place", dimension, point);

                // The sum may round up into the next share, of the last one to 1.
                points[point][dimension] = Math.Min((shares[point] + place) / count, Math.BitDecrement((shares[point] + 1.0) / count));
            }
        }

        return points;
    }
}
