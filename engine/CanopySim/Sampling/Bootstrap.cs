namespace CanopySim.Sampling;

/// <summary>
/// Confidence intervals from rows drawn again with replacement: Efron 1979, doi:10.1214/aos/1176344552; their ends are percentiles of
/// the statistic over the draws (Efron &amp; Tibshirani 1993, chapter 13, from memory).
/// </summary>
internal static class Bootstrap
{
    /// <summary>
    /// Estimates of several statistics at once. A statistic that a draw cannot tell (not a finite number) leaves that draw out of its
    /// interval.
    /// </summary>
    /// <param name="rows">Rows of the sample.</param>
    /// <param name="statistics">The statistics of the rows of these numbers.</param>
    /// <param name="settings">How many draws, how sure, and the seed.</param>
    public static Estimate[] Of(int rows, Func<ReadOnlySpan<int>, double[]> statistics, BootstrapSettings settings)
    {
        var chosen = new int[rows];
        for (var row = 0; row < rows; row++) chosen[row] = row;
        var values = statistics(chosen);
        var draws = new double[settings.Draws][];
        for (var draw = 0; draw < draws.Length; draw++)
        {
            for (var row = 0; row < rows; row++) chosen[row] = Shuffle.Draw(rows, settings.Seed, "bootstrap", draw, row);
            draws[draw] = statistics(chosen);
        }

        return [.. values.Select((value, index) => WithInterval(value, [.. draws.Select(draw => draw[index])], settings.Confidence))];
    }

    private static Estimate WithInterval(double value, double[] drawn, double confidence)
    {
        double[] sorted = [.. drawn.Where(double.IsFinite).Order()];
        return sorted.Length == 0
            ? new Estimate(value, value, value)
            : new Estimate(value, QuantileOf(sorted, (1 - confidence) / 2), QuantileOf(sorted, (1 + confidence) / 2));
    }

    // Straight between order statistics: type 7 of Hyndman & Fan 1996, doi:10.1080/00031305.1996.10473566.
    private static double QuantileOf(double[] sorted, double p)
    {
        var place = p * (sorted.Length - 1);
        var below = (int)place;
        return below + 1 < sorted.Length ? sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below])) : sorted[^1];
    }
}
