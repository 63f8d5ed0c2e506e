using CanopySim.Numerics;

namespace CanopySim.Sampling;

/// <summary>How a factor is spread, as its quantile function: a share of [0, 1) in, a value in the factor's own unit out.</summary>
public abstract record Distribution
{
    // Tails without end: the shares next to 0 and 1 stand for what lies beyond.
    private const double LeastShare = 1.0 / (1L << 54);
    private const double MostShare = 1 - (1.0 / (1L << 53));

    private Distribution()
    {
    }

    /// <summary>The value below which the share p lies; never decreasing in p.</summary>
    /// <exception cref="ArgumentOutOfRangeException">p is not in [0, 1].</exception>
    public double Quantile(double p)
    {
        if (p is not (>= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(p), p, "expected a share from 0 to 1");
        return ValueAt(p);
    }

    /// <summary>Even between two ends.</summary>
    public static Distribution Uniform(double least, double most) => new UniformDistribution(Finite(least), Above(most, least));

    /// <summary>The normal distribution of a mean and a standard deviation.</summary>
    public static Distribution Normal(double mean, double deviation) => new NormalDistribution(Finite(mean), Above(deviation, 0));

    /// <summary>Density rising in a straight line from the least to the most likely value and falling to the most.</summary>
    public static Distribution Triangular(double least, double mode, double most)
    {
        Above(most, least);
        if (!(mode >= least && mode <= most)) throw new ArgumentOutOfRangeException(nameof(mode), mode, $"expected {least} to {most}");
        return new TriangularDistribution(least, mode, most);
    }

    /// <summary>Values whose logarithm is normal; one standard deviation is a factor (above 1) of the median.</summary>
    public static Distribution LogNormal(double median, double deviationFactor) =>
        new LogNormalDistribution(Above(median, 0), Above(deviationFactor, 1));

    /// <summary>
    /// Known quantiles, straight between them: (share, value) with shares rising from 0 to 1 and values that never fall.
    /// </summary>
    public static Distribution FromQuantiles(params IReadOnlyList<(double Share, double Value)> quantiles)
    {
        var rises = quantiles.Count >= 2 && quantiles[0].Share == 0 && quantiles[^1].Share == 1
            && quantiles.Zip(quantiles.Skip(1)).All(pair => pair.First.Share < pair.Second.Share && pair.First.Value <= pair.Second.Value)
            && quantiles.All(quantile => double.IsFinite(quantile.Value));
        return rises
            ? new QuantileDistribution([.. quantiles])
            : throw new ArgumentException("expected shares rising from 0 to 1 and values that never fall", nameof(quantiles));
    }

    /// <summary>The part of this distribution between two ends, which alone is drawn from.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ends are in the wrong order, or hold none of it.</exception>
    public Distribution Within(double least, double most)
    {
        Above(most, least);
        var (low, high) = (ShareBelow(least), ShareBelow(most));
        if (!(low < high)) throw new ArgumentOutOfRangeException(nameof(most), most, "expected ends with some of the distribution between them");
        return new PartDistribution(this, low, high, least, most);
    }

    private protected abstract double ValueAt(double p);

    /// <summary>The share of draws below a value: by halves, as every quantile function rises and not all have an inverse in closed form.</summary>
    public double ShareBelow(double value)
    {
        var (low, high) = (0.0, 1.0);
        if (ValueAt(low) >= value) return low;
        if (ValueAt(high) <= value) return high;
        for (var half = 0; half < 60; half++)
        {
            var middle = (low + high) / 2;
            if (ValueAt(middle) < value) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    private static double Finite(double value) =>
        double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "expected a finite number");

    private static double Above(double value, double limit) =>
        double.IsFinite(value) && value > limit && double.IsFinite(limit)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, $"expected a number above {limit}");

    private static double Score(double p) => StandardNormal.Quantile(Math.Clamp(p, LeastShare, MostShare));

    private sealed record UniformDistribution(double Least, double Most) : Distribution
    {
        private protected override double ValueAt(double p) => Least + (p * (Most - Least));
    }

    private sealed record NormalDistribution(double Mean, double Deviation) : Distribution
    {
        private protected override double ValueAt(double p) => Mean + (Deviation * Score(p));
    }

    private sealed record LogNormalDistribution(double Median, double Factor) : Distribution
    {
        private protected override double ValueAt(double p) => Median * Math.Pow(Factor, Score(p));
    }

    private sealed record TriangularDistribution(double Least, double Mode, double Most) : Distribution
    {
        private protected override double ValueAt(double p)
        {
            var rising = (Mode - Least) / (Most - Least);
            return p < rising
                ? Least + Math.Sqrt(p * (Most - Least) * (Mode - Least))
                : Most - Math.Sqrt((1 - p) * (Most - Least) * (Most - Mode));
        }
    }

    private sealed record QuantileDistribution((double Share, double Value)[] Known) : Distribution
    {
        private protected override double ValueAt(double p)
        {
            var above = 1;
            while (above < Known.Length - 1 && Known[above].Share < p) above++;
            var (from, to) = (Known[above - 1], Known[above]);
            return from.Value + ((p - from.Share) / (to.Share - from.Share) * (to.Value - from.Value));
        }
    }

    private sealed record PartDistribution(Distribution Whole, double Low, double High, double Least, double Most) : Distribution
    {
        private protected override double ValueAt(double p) => Math.Clamp(Whole.ValueAt(Low + (p * (High - Low))), Least, Most);
    }
}
