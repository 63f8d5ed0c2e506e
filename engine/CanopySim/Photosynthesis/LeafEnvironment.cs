namespace CanopySim.Photosynthesis;

/// <summary>The air at a leaf for one hour.</summary>
/// <param name="AirTemperatureCelsius">Air temperature [°C].</param>
/// <param name="VaporPressure">Vapor pressure [kPa].</param>
/// <param name="AirPressure">Air pressure [kPa].</param>
/// <param name="WindSpeed">Wind speed at the leaf [m s⁻¹].</param>
/// <param name="Co2">CO₂ of the air [µmol mol⁻¹].</param>
public readonly record struct LeafEnvironment(
    double AirTemperatureCelsius,
    double VaporPressure,
    double AirPressure,
    double WindSpeed,
    double Co2);
