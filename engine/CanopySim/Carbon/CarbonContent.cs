using CanopySim.Numerics;

namespace CanopySim.Carbon;

/// <summary>Carbon in a gram of dry mass [g g⁻¹], general values from memory: leaf .45-.46, wood .46-.48, berry .42-.44.</summary>
public static class CarbonContent
{
    public const double Leaf = 0.455;
    public const double Wood = 0.47;
    public const double FruitStructure = 0.43;

    /// <summary>Sugar and starch are held as carbohydrate (CH₂O).</summary>
    public const double Carbohydrate = UnitConversion.GramsCarbonPerGramCarbohydrate;
}
