using CanopySim.Plants;

namespace CanopySim.Carbon;

/// <summary>The carbon that a vine holds, counted organ by organ and so independently of the flows [g C].</summary>
public static class CarbonStock
{
    public static double Of(Vine vine, CarbonParameters carbon)
    {
        var (leafArea, stem) = (0.0, 0.0);
        foreach (var shoot in vine.AllShoots())
        {
            stem += shoot.StemDryMass;
            foreach (var phytomer in shoot.Phytomers) leafArea += phytomer.Leaf?.Area ?? 0;
        }

        return (leafArea * carbon.LeafMassPerArea * CarbonContent.Leaf)
            + ((stem + vine.Carbon.PerennialDryMass) * CarbonContent.Wood)
            + (vine.Crop.StructureDryMass * CarbonContent.FruitStructure)
            + ((vine.Crop.Sugar + vine.Carbon.Reserves) * CarbonContent.Carbohydrate);
    }
}
