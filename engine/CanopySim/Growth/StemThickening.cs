using CanopySim.Carbon;
using CanopySim.Plants;

namespace CanopySim.Growth;

/// <summary>
/// Stems thicken towards a ripe mass that grows with their length: mass per length = ripe mass × (length / 1.3 m)^0.7, a share
/// of what is missing each warm day; less where the shoot is led down. Mass fitted to canes of 64 g fresh (Kliewer &amp; Dokoozlian
/// 2005, table 3), the rest assumed. Shoots led down stay thinner and their canes less dense: Schubert et al. 1995, Am J Enol Vitic
/// 46:324-328; Am J Enol Vitic 40:259 (1989), Cabernet-Sauvignon.
/// </summary>
/// <param name="carbon">The masses.</param>
/// <param name="isLedDown">For each wall of foliage, by its number, whether wires lead its shoots down.</param>
public sealed class StemThickening(CarbonParameters carbon, IReadOnlyList<bool> isLedDown)
{
    private const double PerDay = 0.04;
    private const double ReferenceLength = 1.3;
    private const double Exponent = 0.7;

    /// <summary>Lays down the day's potential on every shoot and returns the dry mass it would add [g].</summary>
    public double Prepare(Vine vine, double warmth)
    {
        var sum = 0.0;
        foreach (var shoot in vine.Shoots)
        {
            var length = shoot.Length;
            var ripe = length * 100 * carbon.RipeStemMass * Math.Pow(length / ReferenceLength, Exponent);
            if (isLedDown[shoot.Wall]) ripe *= carbon.LedDownStemMass;
            shoot.PotentialThickening = PerDay * warmth * Math.Max(0, ripe - shoot.StemDryMass);
            sum += shoot.PotentialThickening;
        }

        return sum;
    }

    /// <summary>Thickens every shoot by a share of its potential; returns the dry mass made [g].</summary>
    public static double Grow(Vine vine, double share)
    {
        var sum = 0.0;
        foreach (var shoot in vine.Shoots)
        {
            shoot.StemDryMass += share * shoot.PotentialThickening;
            sum += share * shoot.PotentialThickening;
            shoot.PotentialThickening = 0;
        }

        return sum;
    }
}
