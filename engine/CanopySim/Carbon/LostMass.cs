namespace CanopySim.Carbon;

/// <summary>Dry mass that left the vine: shed, cut or killed [g].</summary>
public readonly record struct LostMass(double Leaf, double Stem, double FruitStructure, double Sugar)
{
    public static LostMass operator +(LostMass a, LostMass b) =>
        new(a.Leaf + b.Leaf, a.Stem + b.Stem, a.FruitStructure + b.FruitStructure, a.Sugar + b.Sugar);
}
