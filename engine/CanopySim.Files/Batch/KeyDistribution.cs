using System.Globalization;
using CanopySim.Files.Quantities;

namespace CanopySim.Files.Batch;

/// <summary>
/// How the value of a key is spread, cut to the range that the key takes: what lies outside is not moved to its ends, but
/// the rest made up for it.
/// </summary>
public sealed record KeyDistribution
{
    private (double Below, double Above)? _shares;

    public required DistributionKind Kind { get; init; }

    /// <summary>Least value that is drawn.</summary>
    public required double From { get; init; }

    /// <summary>Greatest value that is drawn.</summary>
    public required double To { get; init; }

    /// <summary>Mean of a normal, peak of a triangular, median of a lognormal distribution.</summary>
    public double Center { get; init; }

    /// <summary>Standard deviation of a normal distribution; factor of one standard deviation of a lognormal one.</summary>
    public double Spread { get; init; }

    /// <summary>Share of the distribution that lies outside of its ends and is cut.</summary>
    public double ShareCut => Kind is DistributionKind.Normal or DistributionKind.Lognormal
        ? 1 - (Shares.Above - Shares.Below)
        : 0;

    // Shares of the whole distribution below its ends.
    private (double Below, double Above) Shares =>
        _shares ??= (NormalCurve.ShareBelow(Score(From)), NormalCurve.ShareBelow(Score(To)));

    /// <summary>The value that so large a share of all draws lies below.</summary>
    /// <param name="share">Share [0 to 1).</param>
    public double At(double share)
    {
        var value = Kind switch
        {
            DistributionKind.Uniform => From + (share * (To - From)),
            DistributionKind.Triangular => Triangular(share),
            DistributionKind.Normal => Center + (Spread * ScoreAt(share)),
            DistributionKind.Lognormal => Center * Math.Pow(Spread, ScoreAt(share)),
            _ => throw new ArgumentOutOfRangeException(nameof(share), Kind, "a distribution that is not known"),
        };
        return Math.Clamp(value, From, To);
    }

    public string Words(string unit)
    {
        var ends = $"from {QuantityText.Show(From, "1")} to {QuantityText.Show(To, unit)}";
        var center = QuantityText.Show(Center, unit);
        var cut = ShareCut >= 0.0005
            ? string.Create(CultureInfo.InvariantCulture, $" ({100 * ShareCut:0.#} % of it cut)")
            : "";
        return Kind switch
        {
            DistributionKind.Uniform => $"uniform {ends}",
            DistributionKind.Triangular => $"triangular {ends}, most likely {center}",
            DistributionKind.Normal =>
                $"normal, mean {center}, standard deviation {QuantityText.Show(Spread, unit)}, {ends}{cut}",
            _ => $"lognormal, median {center}, times or divided by {QuantityText.Show(Spread, "1")}, {ends}{cut}",
        };
    }

    private double Triangular(double share)
    {
        var (width, left) = (To - From, Center - From);
        return share * width < left
            ? From + Math.Sqrt(share * width * left)
            : To - Math.Sqrt((1 - share) * width * (width - left));
    }

    // Standard normal score of a value; ends of a lognormal distribution may be 0 or below.
    private double Score(double value) => Kind == DistributionKind.Normal
        ? (value - Center) / Spread
        : value <= 0 ? double.NegativeInfinity : Math.Log(value / Center) / Math.Log(Spread);

    private double ScoreAt(double share) =>
        NormalCurve.ScoreAt(Shares.Below + (share * (Shares.Above - Shares.Below)));
}
