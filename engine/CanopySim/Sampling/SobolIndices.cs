namespace CanopySim.Sampling;

/// <summary>Shares of an output's variance that a factor explains: alone, and together with all others.</summary>
public sealed record SobolIndex(Estimate FirstOrder, Estimate Total);

/// <summary>
/// Sobol's sensitivity indices from the outputs of a <see cref="SaltelliDesign"/>, A, B and AB_i centered on their mean:
/// S_i = mean(B (AB_i − A)) / V, Saltelli et al. 2010, doi:10.1016/j.cpc.2009.09.018, table 2 (b);
/// ST_i = mean((A − AB_i)²) / 2V, Jansen 1999, doi:10.1016/S0010-4655(98)00154-4, the same table (f); V the variance of A and B together.
/// Intervals draw base points again. An index is an estimate: of a factor that does little it may come out a little below 0.
/// </summary>
public sealed record SobolIndices
{
    // Below this share of the mean's square the variance is rounding.
    private const double LeastVariance = 1e-24;

    private const int FewestRows = 2;

    /// <summary>Mean of the output over A and B, in its unit; 0 where no row is left.</summary>
    public required double Mean { get; init; }

    /// <summary>Variance of the output over A and B.</summary>
    public required double Variance { get; init; }

    /// <summary>By factor; empty where the output does not vary or fewer than two rows are left.</summary>
    public required IReadOnlyList<SobolIndex> Factors { get; init; }

    /// <summary>Base points that counted.</summary>
    public required int Rows { get; init; }

    /// <summary>Base points that were left out because one of their outputs is missing.</summary>
    public required int DroppedRows { get; init; }

    /// <summary>The indices of one output.</summary>
    /// <param name="outputs">In the order of the design's points; null or not finite where an item failed.</param>
    /// <param name="factors">Number of factors.</param>
    /// <param name="settings">Of the intervals.</param>
    /// <exception cref="ArgumentException">The outputs are not those of whole rows.</exception>
    public static SobolIndices Of(IReadOnlyList<double?> outputs, int factors, BootstrapSettings settings)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factors);
        var complete = CompleteRows.Of(outputs, SaltelliDesign.RowLength(factors));
        var rows = complete.Rows;
        var mean = rows.Length > 0 ? rows.Average(row => (row[0] + row[1]) / 2) : 0;
        var variance = rows.Length > 0 ? rows.Average(row => (Square(row[0] - mean) + Square(row[1] - mean)) / 2) : 0;
        var varies = rows.Length >= FewestRows && variance > LeastVariance * mean * mean;
        var estimates = varies ? Bootstrap.Of(rows.Length, chosen => Shares(rows, chosen, factors), settings) : [];
        return new SobolIndices
        {
            Mean = mean,
            Variance = variance,
            Factors = [.. Enumerable.Range(0, estimates.Length / 2).Select(factor => new SobolIndex(estimates[2 * factor], estimates[(2 * factor) + 1]))],
            Rows = rows.Length,
            DroppedRows = complete.Dropped,
        };
    }

    // First order and total of each factor in turn.
    private static double[] Shares(double[][] rows, ReadOnlySpan<int> chosen, int factors)
    {
        var mean = 0.0;
        foreach (var row in chosen) mean += (rows[row][0] + rows[row][1]) / 2;
        mean /= chosen.Length;
        var variance = 0.0;
        var sums = new double[2 * factors];
        foreach (var index in chosen)
        {
            var row = rows[index];
            var (a, b) = (row[0] - mean, row[1] - mean);
            variance += (a * a + b * b) / 2;
            for (var factor = 0; factor < factors; factor++)
            {
                var change = row[2 + factor] - row[0];
                sums[2 * factor] += b * change;
                sums[(2 * factor) + 1] += change * change / 2;
            }
        }

        for (var index = 0; index < sums.Length; index++) sums[index] /= variance;
        return sums;
    }

    private static double Square(double value) => value * value;
}
