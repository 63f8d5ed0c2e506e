using CanopySim.Numerics;

namespace CanopySim.Sampling;

/// <summary>
/// Points that fill the unit cube evenly: Sobol 1967, doi:10.1016/0041-5553(67)90144-9, in the Gray code order of Antonov &amp;
/// Saleev 1979, doi:10.1016/0041-5553(79)90085-5, with the direction numbers of <see cref="JoeKuoNumbers"/>. Of the first 2^k
/// points each coordinate has one in every interval [i/2^k, (i+1)/2^k). Counts that are powers of two keep that balance.
/// </summary>
public static class SobolSequence
{
    private const int Bits = 32;

    /// <summary>Most dimensions that a point may have.</summary>
    public static int MostDimensions => JoeKuoNumbers.Rows.Count + 1;

    /// <summary>
    /// The first points, [point][dimension] in [0, 1). Without a seed the plain sequence, which begins at 0; with one every
    /// dimension is shifted by its own random digits, which keeps the balance (a random digital shift: L'Ecuyer &amp; Lemieux 2002, from
    /// memory), and no coordinate is 0.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">No point or too many, no dimension or too many.</exception>
    public static double[][] Points(int count, int dimensions, ulong? seed = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(count);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dimensions);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dimensions, MostDimensions);
        var points = new double[count][];
        for (var point = 0; point < count; point++) points[point] = new double[dimensions];
        for (var dimension = 0; dimension < dimensions; dimension++)
        {
            var directions = Directions(dimension);
            var shift = seed is { } key ? (uint)(SeededValue.Uniform(key, "sobol shift", dimension) * (1UL << Bits)) : 0;

            // Below the last digit; the middle, so that a coordinate is never 0.
            var below = seed is null ? 0 : 0.5;
            var digits = 0u;
            for (var point = 0; point < count; point++)
            {
                if (point > 0) digits ^= directions[int.TrailingZeroCount(point)];
                points[point][dimension] = ((digits ^ shift) + below) / (1UL << Bits);
            }
        }

        return points;
    }

    /// <summary>The directions v_k = m_k 2^(32−k) of a dimension, the first that of the highest digit: Joe &amp; Kuo 2008, Eq. 2.</summary>
    internal static uint[] Directions(int dimension)
    {
        var directions = new uint[Bits];
        if (dimension == 0)
        {
            for (var k = 0; k < Bits; k++) directions[k] = 1u << (Bits - 1 - k);
            return directions;
        }

        var row = JoeKuoNumbers.Rows[dimension - 1];
        var (degree, inner) = (row[0], row[1]);
        for (var k = 0; k < degree; k++) directions[k] = (uint)row[2 + k] << (Bits - 1 - k);
        for (var k = degree; k < Bits; k++)
        {
            directions[k] = directions[k - degree] ^ (directions[k - degree] >> degree);
            for (var term = 1; term < degree; term++)
                if ((inner >> (degree - 1 - term) & 1) == 1) directions[k] ^= directions[k - term];
        }

        return directions;
    }
}
