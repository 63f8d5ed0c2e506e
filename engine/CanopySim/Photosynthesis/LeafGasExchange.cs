namespace CanopySim.Photosynthesis;

/// <summary>What a leaf exchanges with the air, per one-sided area.</summary>
/// <param name="NetAssimilation">Net assimilation [µmol CO₂ m⁻² s⁻¹].</param>
/// <param name="GrossAssimilation">Net assimilation and day respiration [µmol CO₂ m⁻² s⁻¹].</param>
/// <param name="DayRespiration">Day respiration [µmol CO₂ m⁻² s⁻¹].</param>
/// <param name="StomatalConductanceToWater">Stomatal conductance to water vapor [mol m⁻² s⁻¹].</param>
/// <param name="Transpiration">Transpiration [mmol H₂O m⁻² s⁻¹]; negative: dew.</param>
/// <param name="LeafTemperatureCelsius">Leaf temperature [°C].</param>
/// <param name="IntercellularCo2">CO₂ between the cells [µmol mol⁻¹].</param>
public readonly record struct LeafGasExchange(
    double NetAssimilation,
    double GrossAssimilation,
    double DayRespiration,
    double StomatalConductanceToWater,
    double Transpiration,
    double LeafTemperatureCelsius,
    double IntercellularCo2);
