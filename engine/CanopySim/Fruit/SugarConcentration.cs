namespace CanopySim.Fruit;

/// <summary>
/// Sugar of juice by volume, as some countries' growers read it, from Brix [g soluble solids per 100 g of juice]. Both the fit of the
/// density and the part that is not sugar are from memory, handbook values without a source at hand.
/// </summary>
public static class SugarConcentration
{
    /// <summary>
    /// What dissolves in juice besides sugar [g L⁻¹]: acids, minerals, phenols and the rest. 15 to 25, from memory.
    /// </summary>
    public const double ExtractWithoutSugar = 20;

    // Of water at 20 °C, to which the specific gravity refers, rounded [g L⁻¹].
    private const double WaterDensity = 1000;

    /// <summary>
    /// Specific gravity of a sugar solution, 20 °C over water at 20 °C: 1 + B / (258.6 − 227.1 B / 258.2), B in Brix from 0 to 40.
    /// A common fit to the sucrose tables, from memory.
    /// </summary>
    public static double SpecificGravity(double brix) => 1 + (brix / (258.6 - (227.1 * brix / 258.2)));

    /// <summary>All soluble solids in a liter of juice [g L⁻¹].</summary>
    public static double TotalSolids(double brix) => brix / 100 * WaterDensity * SpecificGravity(brix);

    /// <summary>Sugar in a liter of juice [g L⁻¹]: the solids without <see cref="ExtractWithoutSugar"/>, none below it.</summary>
    public static double Sugar(double brix) => Math.Max(0, TotalSolids(brix) - ExtractWithoutSugar);
}
