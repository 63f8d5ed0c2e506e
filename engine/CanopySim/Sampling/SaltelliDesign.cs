namespace CanopySim.Sampling;

/// <summary>
/// Points for first and total order indices: two samples A and B from one Sobol sequence of twice as many dimensions, and for each
/// factor i the sample AB_i, which is A with the column i of B. Saltelli et al. 2010, doi:10.1016/j.cpc.2009.09.018, section 3.
/// </summary>
public static class SaltelliDesign
{
    /// <summary>Most factors that a design may have.</summary>
    public static int MostFactors => SobolSequence.MostDimensions / 2;

    /// <summary>Points that belong together: those of A, of B and of every AB_i.</summary>
    public static int RowLength(int factors) => factors + 2;

    /// <summary>Points of a design.</summary>
    public static int Count(int baseCount, int factors) => baseCount * RowLength(factors);

    /// <summary>
    /// The points, [point][factor] in (0, 1), row after row of A, B, AB_1, … of one base point. A base count that is a power of two keeps
    /// the sequence's balance.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">No base point, no factor or more than <see cref="MostFactors"/>.</exception>
    public static double[][] Points(int baseCount, int factors, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factors);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(factors, MostFactors);
        var both = SobolSequence.Points(baseCount, 2 * factors, seed);
        var points = new double[Count(baseCount, factors)][];
        for (var row = 0; row < baseCount; row++)
        {
            var first = row * RowLength(factors);
            var (a, b) = (both[row][..factors], both[row][factors..]);
            (points[first], points[first + 1]) = (a, b);
            for (var factor = 0; factor < factors; factor++)
            {
                double[] mixed = [.. a];
                mixed[factor] = b[factor];
                points[first + 2 + factor] = mixed;
            }
        }

        return points;
    }
}
