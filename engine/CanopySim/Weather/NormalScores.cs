using CanopySim.Numerics;

namespace CanopySim.Weather;

/// <summary>
/// How residuals are spread, as pairs of a standard normal score and the residual of that rank, so that what is generated as
/// normal comes out as skewed as it was measured. Beyond the record's extremes the tails go on as normal ones, or no generated
/// season could be hotter or colder than the record.
/// </summary>
internal sealed class NormalScores
{
    private readonly double[] _scores;
    private readonly double[] _residuals;

    /// <param name="residuals">Residuals in units of their standard deviation; at least one.</param>
    public NormalScores(IEnumerable<double> residuals)
    {
        _residuals = [.. residuals.Order()];
        _scores = [.. Enumerable.Range(0, _residuals.Length).Select(rank => StandardNormal.Quantile((rank + 0.5) / _residuals.Length))];
    }

    /// <summary>The normal score of each residual, in the order in which they came.</summary>
    public static double[] Of(IReadOnlyList<double> residuals)
    {
        var scores = new double[residuals.Count];
        var rank = 0;
        foreach (var index in Enumerable.Range(0, residuals.Count).OrderBy(index => residuals[index]))
            scores[index] = StandardNormal.Quantile((rank++ + 0.5) / residuals.Count);
        return scores;
    }

    /// <summary>The residual of a score.</summary>
    public double ResidualAt(double score)
    {
        if (score <= _scores[0]) return _residuals[0] + (score - _scores[0]);
        if (score >= _scores[^1]) return _residuals[^1] + (score - _scores[^1]);
        var above = Array.BinarySearch(_scores, score);
        if (above >= 0) return _residuals[above];
        above = ~above;
        var share = (score - _scores[above - 1]) / (_scores[above] - _scores[above - 1]);
        return _residuals[above - 1] + share * (_residuals[above] - _residuals[above - 1]);
    }
}
