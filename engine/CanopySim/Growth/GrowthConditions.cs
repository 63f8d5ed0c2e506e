namespace CanopySim.Growth;

/// <summary>What a day offers to growth.</summary>
/// <param name="Date">The day.</param>
/// <param name="ThermalUnits">Thermal units of the day [°C d].</param>
/// <param name="ThermalUnitsSinceBloom">Thermal units from bloom to this day [°C d]; null before bloom.</param>
/// <param name="NodeWater">Share of the node rate that soil water allows [0 to 1].</param>
/// <param name="ExpansionWater">Share of expansion that it allows.</param>
/// <param name="LateralWater">Share of the laterals' rate that it allows.</param>
public readonly record struct GrowthConditions(
    DateOnly Date,
    double ThermalUnits,
    double? ThermalUnitsSinceBloom,
    double NodeWater,
    double ExpansionWater,
    double LateralWater);
