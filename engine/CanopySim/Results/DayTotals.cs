using CanopySim.Growth;
using CanopySim.Photosynthesis;
using CanopySim.Plants;

namespace CanopySim.Results;

/// <summary>The blades that hang on an evening, all vines together: counted in one walk, since every day of a season asks.</summary>
/// <param name="Area">Area of all blades, folded ones too [m²].</param>
/// <param name="LateralArea">Of it on laterals [m²].</param>
/// <param name="MeanAgeDays">Mean age of the unfolded ones, by area [d]; null where there are none.</param>
/// <param name="MeanEfficiency">Their mean efficiency, by area [0 to 1].</param>
internal readonly record struct Foliage(double Area, double LateralArea, double? MeanAgeDays, double? MeanEfficiency)
{
    public static Foliage Of(Canopy canopy, LeafAgeCurve curve)
    {
        var (area, lateral, unfolded, age, efficiency) = (0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var vine in canopy.Vines)
        {
            foreach (var leaf in vine.Leaves())
            {
                area += leaf.Area;
                if (leaf.Shoot.Order == 2) lateral += leaf.Area;
                if (!leaf.HasUnfolded) continue;
                unfolded += leaf.Area;
                age += leaf.Area * leaf.AgeDays;
                efficiency += leaf.Area * curve.At(leaf.PhysiologicalAge);
            }
        }

        return unfolded > 0 ? new(area, lateral, age / unfolded, efficiency / unfolded) : new(area, lateral, null, null);
    }
}

/// <summary>What the leaves did in a day, all vines together; units are those of <see cref="LeafDay"/>.</summary>
internal readonly record struct LeafTotals(double AbsorbedParMoles, double NetAssimilationGrams, double RespirationGrams)
{
    public static LeafTotals Of(IReadOnlyList<LeafDay> leaves)
    {
        var (absorbed, net, respiration) = (0.0, 0.0, 0.0);
        foreach (var leaf in leaves)
        {
            absorbed += leaf.AbsorbedParMoles;
            net += leaf.NetAssimilationGrams;
            respiration += leaf.RespirationGrams;
        }

        return new(absorbed, net, respiration);
    }
}
