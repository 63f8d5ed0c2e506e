using CanopySim.Carbon;
using CanopySim.Plants;

namespace CanopySim.Growth;

/// <summary>A killing frost takes all green tissue: shoots, leaves and clusters.</summary>
public static class FrostDamage
{
    /// <summary>Removes a vine's shoots and crop; returns what was lost.</summary>
    public static LostMass Kill(Vine vine, CarbonParameters carbon)
    {
        var leaf = vine.Leaves().Sum(leaf => leaf.Area) * carbon.LeafMassPerArea;
        var stem = vine.AllShoots().Sum(shoot => shoot.StemDryMass);
        var lost = new LostMass(leaf, stem, vine.Crop.StructureDryMass, vine.Crop.Sugar);
        vine.RemoveAllShoots();
        vine.Crop.Berries = vine.Crop.StructureDryMass = vine.Crop.PotentialStructure = vine.Crop.Sugar = 0;
        return lost;
    }
}
