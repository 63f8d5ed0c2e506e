using CanopySim.Carbon;
using CanopySim.Plants;

namespace CanopySim.Growth;

/// <summary>Leaves age day by day, wear out faster in deep shade, and fall at the end of their life.</summary>
public sealed class LeafSenescence(GrowthParameters growth, CarbonParameters carbon, LeafAgeCurve curve)
{
    private readonly double _lastBestAge = curve.Points.Last(point => point.Efficiency == curve.Points.Max(other => other.Efficiency)).Age;

    // Basal leaves yellow from about 110 to 130 d where shaded (general, from memory): in the dark a leaf of 150 d lasts 105.
    private const double WearInDarkness = 1 / 0.7;
    private const double LightWithoutExtraWear = 0.08;

    /// <summary>
    /// Days that a leaf past its best ages in a day, by the share of all the vine's leaf area of the season that was cut off [0 to 1].
    /// A younger leaf ripens as ever, and a crop alone changes nothing: Poni et al. 1994.
    /// </summary>
    public double AgeingRate(double physiologicalAge, double removedShare) =>
        physiologicalAge < _lastBestAge ? 1 : 1 - (growth.AgeingSavedByLeafLoss * removedShare);

    /// <summary>Ages a vine's leaves by a day and sheds the spent ones; returns the dry mass shed [g].</summary>
    public double Advance(Vine vine)
    {
        var shed = 0.0;
        var removed = RemovedShare(vine);
        foreach (var shoot in vine.AllShoots())
        {
            foreach (var phytomer in shoot.Phytomers)
            {
                if (phytomer.Leaf is not { HasUnfolded: true } leaf) continue;
                leaf.AgeDays++;
                var rate = AgeingRate(leaf.PhysiologicalAge, removed);
                leaf.PhysiologicalAge += rate;
                var light = Math.Clamp((leaf.RelativeLight ?? 1) / LightWithoutExtraWear, 0, 1);
                leaf.Wear += rate * (WearInDarkness + ((1 - WearInDarkness) * light));
                if (leaf.Wear < growth.LeafLife) continue;
                shed += leaf.Area * carbon.LeafMassPerArea;
                vine.ShedLeafArea += leaf.Area;
                phytomer.Leaf = null;
            }
        }

        return shed;
    }

    private static double RemovedShare(Vine vine) => vine.RemovedLeafArea <= 0
        ? 0
        : vine.RemovedLeafArea / (vine.RemovedLeafArea + vine.ShedLeafArea + vine.Leaves().Sum(leaf => leaf.Area));
}
