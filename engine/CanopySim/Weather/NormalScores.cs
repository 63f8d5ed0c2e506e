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
        _scores = [.. Enumerable.Range(0, _residuals.Length).Select(rank => NormalQuantile((rank + 0.5) / _residuals.Length))];
    }

    /// <summary>The normal score of each residual, in the order in which they came.</summary>
    public static double[] Of(IReadOnlyList<double> residuals)
    {
        var scores = new double[residuals.Count];
        var rank = 0;
        foreach (var index in Enumerable.Range(0, residuals.Count).OrderBy(index => residuals[index]))
            scores[index] = NormalQuantile((rank++ + 0.5) / residuals.Count);
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

    /// <summary>
    /// The standard normal value below which a share p (between 0 and 1) lies, to about 1 in 10⁷: Wichura 1988, Applied
    /// Statistics 37:477-484, algorithm AS 241, PPND7; coefficients from memory, held against another library in the tests.
    /// </summary>
    internal static double NormalQuantile(double p)
    {
        var q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
        {
            var r = 0.180625 - q * q;
            return q * (((59.109374720 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179)
                / (((67.187563600 * r + 78.757757664) * r + 17.895169469) * r + 1);
        }

        var tail = Math.Sqrt(-Math.Log(q < 0 ? p : 1 - p));
        double value;
        if (tail <= 5)
        {
            var r = tail - 1.6;
            value = (((0.17023821103 * r + 1.3067284816) * r + 2.7568153900) * r + 1.4234372777)
                / ((0.12021132975 * r + 0.73700164250) * r + 1);
        }
        else
        {
            var r = tail - 5;
            value = (((0.017337203997 * r + 0.42868294337) * r + 3.0812263860) * r + 6.6579051150)
                / ((0.012258202635 * r + 0.24197894225) * r + 1);
        }

        return q < 0 ? -value : value;
    }
}
