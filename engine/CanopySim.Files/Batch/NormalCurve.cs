namespace CanopySim.Files.Batch;

/// <summary>The standard normal distribution and its inverse.</summary>
public static class NormalCurve
{
    // Beyond this a double's share is 0 or 1.
    private const double Farthest = 38;

    /// <summary>
    /// Share of a standard normal distribution below a score. By the series for small scores and the continued fraction of
    /// the tail for large ones: Abramowitz and Stegun 1964, Handbook of Mathematical Functions, Eqs. 26.2.11 and 26.2.14.
    /// </summary>
    public static double ShareBelow(double score)
    {
        if (score > 0) return 1 - ShareBelow(-score);
        if (score < -Farthest) return 0;
        var density = Math.Exp(-0.5 * score * score) / Math.Sqrt(2 * Math.PI);
        var x = -score;
        if (x > 3)
        {
            const int Terms = 120;
            var fraction = x;
            for (var term = Terms; term >= 1; term--) fraction = x + (term / fraction);
            return density / fraction;
        }

        var (sum, part) = (x, x);
        for (var odd = 3; part > 1e-18 * sum; odd += 2) sum += part *= x * x / odd;
        return 0.5 - (density * sum);
    }

    /// <summary>
    /// The score that a share lies below: the rational guess of Abramowitz and Stegun 1964, Eq. 26.2.23 (within 4.5e-4),
    /// brought to a double's precision by three steps of Halley's method.
    /// </summary>
    /// <param name="share">Share [0 to 1]; at its ends the score is infinite.</param>
    public static double ScoreAt(double share)
    {
        if (share <= 0) return double.NegativeInfinity;
        if (share >= 1) return double.PositiveInfinity;
        if (share > 0.5) return -ScoreAt(1 - share);
        var t = Math.Sqrt(-2 * Math.Log(share));
        var score = -(t - ((2.515517 + (t * (0.802853 + (t * 0.010328))))
            / (1 + (t * (1.432788 + (t * (0.189269 + (t * 0.001308))))))));
        for (var step = 0; step < 3; step++)
        {
            var density = Math.Exp(-0.5 * score * score) / Math.Sqrt(2 * Math.PI);
            if (density == 0) break;
            var off = (ShareBelow(score) - share) / density;
            score -= off / (1 + (0.5 * score * off));
        }

        return score;
    }
}
