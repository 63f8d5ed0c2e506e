namespace CanopySim.Photosynthesis;

/// <summary>
/// Respiration of a leaf in the dark [µmol m⁻² s⁻¹]: the same rate as by day, Rd25 · exp[46390 (T − 298.15) / (298.15
/// R T)]. Bernacchi et al. 2001; that light does not lower it is common practice, no source.
/// </summary>
public static class LeafRespiration
{
    /// <summary>Rate at a temperature [°C], times a factor of the leaf (age, acclimation).</summary>
    public static double At(double temperatureCelsius, LeafParameters parameters, double respirationFactor = 1) =>
        parameters.DayRespiration25 * respirationFactor
        * TemperatureResponse.Arrhenius(temperatureCelsius, PhotosynthesisConstants.DayRespirationActivation);
}
