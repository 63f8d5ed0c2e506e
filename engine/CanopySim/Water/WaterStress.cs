namespace CanopySim.Water;

/// <summary>
/// What dry soil takes from each process: nothing above one share of transpirable water, all below another, a straight line
/// between. The order (laterals first, then expansion, nodes, gas exchange last) is published (Lebon et al. 2006, Ann Bot
/// 98:175-185; Pellegrino et al. 2005), the numbers are from memory.
/// </summary>
public static class WaterStress
{
    public static double Laterals(double soilWaterFraction) => Ramp(soilWaterFraction, 0.25, 0.65);

    public static double Expansion(double soilWaterFraction) => Ramp(soilWaterFraction, 0.12, 0.50);

    public static double Nodes(double soilWaterFraction) => Ramp(soilWaterFraction, 0.08, 0.40);

    /// <summary>Factor of stomatal conductance.</summary>
    public static double Stomata(double soilWaterFraction) => Ramp(soilWaterFraction, 0.02, 0.35);

    private static double Ramp(double fraction, double none, double full) => Math.Clamp((fraction - none) / (full - none), 0, 1);
}
