namespace CanopySim.Numerics;

/// <summary>Quantiles of a few values.</summary>
public static class Quantile
{
    /// <summary>
    /// The value below which a share lies, straight between neighbors, type 7 of Hyndman &amp; Fan 1996,
    /// doi:10.2307/2684934. Infinite values count with their order; between a finite and an infinite one it is infinite.
    /// </summary>
    /// <param name="sorted">The values, from least to greatest; at least one.</param>
    /// <param name="share">The share [0 to 1].</param>
    public static double Of(IReadOnlyList<double> sorted, double share)
    {
        ArgumentOutOfRangeException.ThrowIfZero(sorted.Count);
        var at = share * (sorted.Count - 1);
        var below = (int)Math.Floor(at);
        var part = at - below;
        return part == 0 ? sorted[below] : sorted[below] == sorted[below + 1]
            ? sorted[below]
            : sorted[below] + (part * (sorted[below + 1] - sorted[below]));
    }
}
