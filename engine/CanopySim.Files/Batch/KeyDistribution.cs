using System.Globalization;
using CanopySim.Files.Quantities;
using CanopySim.Sampling;

namespace CanopySim.Files.Batch;

/// <summary>
/// How the value of a key is spread, cut to the range that the key takes: what lies outside is not moved to its ends, but
/// the rest made up for it.
/// </summary>
public sealed class KeyDistribution
{
    private readonly DistributionKind _kind;
    private readonly double _center;
    private readonly double _spread;
    private readonly Distribution _drawn;

    /// <param name="kind">Its form.</param>
    /// <param name="from">Least value that is drawn.</param>
    /// <param name="to">Greatest value that is drawn.</param>
    /// <param name="center">Mean of a normal, peak of a triangular, median of a lognormal distribution.</param>
    /// <param name="spread">Standard deviation of a normal distribution; of a lognormal one the factor of one.</param>
    public KeyDistribution(DistributionKind kind, double from, double to, double center = 0, double spread = 0)
    {
        (_kind, From, To, _center, _spread) = (kind, from, to, center, spread);
        var whole = kind switch
        {
            DistributionKind.Uniform => Distribution.Uniform(from, to),
            DistributionKind.Triangular => Distribution.Triangular(from, center, to),
            DistributionKind.Normal => Distribution.Normal(center, spread),
            DistributionKind.Lognormal => Distribution.LogNormal(center, spread),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "a distribution that is not known"),
        };
        var isCut = kind is DistributionKind.Normal or DistributionKind.Lognormal;
        _drawn = isCut ? whole.Within(from, to) : whole;
        ShareCut = isCut ? 1 - (whole.ShareBelow(to) - whole.ShareBelow(from)) : 0;
    }

    public double From { get; }

    public double To { get; }

    /// <summary>Share of the distribution that lies outside of its ends and is cut.</summary>
    public double ShareCut { get; }

    /// <summary>The value that so large a share of all draws lies below.</summary>
    /// <param name="share">Share [0 to 1).</param>
    public double At(double share) => Math.Clamp(_drawn.Quantile(share), From, To);

    public string Words(string unit)
    {
        var ends = $"from {QuantityText.Show(From, "1")} to {QuantityText.Show(To, unit)}";
        var center = QuantityText.Show(_center, unit);
        var cut = ShareCut >= 0.0005
            ? string.Create(CultureInfo.InvariantCulture, $" ({100 * ShareCut:0.#} % of it cut)")
            : "";
        return _kind switch
        {
            DistributionKind.Uniform => $"uniform {ends}",
            DistributionKind.Triangular => $"triangular {ends}, most likely {center}",
            DistributionKind.Normal =>
                $"normal, mean {center}, standard deviation {QuantityText.Show(_spread, unit)}, {ends}{cut}",
            _ => $"lognormal, median {center}, times or divided by {QuantityText.Show(_spread, "1")}, {ends}{cut}",
        };
    }
}
