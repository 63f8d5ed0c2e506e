using CanopySim.Numerics;
using static CanopySim.Photosynthesis.PhotosynthesisConstants;

namespace CanopySim.Photosynthesis;

/// <summary>
/// How rates and constants of photosynthesis change with leaf temperature, as factors that are 1 at 25 °C.
/// </summary>
public static class TemperatureResponse
{
    /// <summary>
    /// Arrhenius: f = exp[ Ea (T − 298.15) / (298.15 R T) ], T [K] of a temperature [°C], Ea the activation energy [J
    /// mol⁻¹].
    /// </summary>
    public static double Arrhenius(double temperatureCelsius, double activation)
    {
        var kelvin = UnitConversion.KelvinFromCelsius(temperatureCelsius);
        return Math.Exp(activation * (kelvin - ReferenceTemperature) / (ReferenceTemperature * GasConstant * kelvin));
    }

    /// <summary>
    /// Peaked Arrhenius: f = Arrhenius · [1 + exp((298.15 ΔS − Hd) / (298.15 R))] / [1 + exp((T ΔS − Hd) / (R T))],
    /// Hd the deactivation energy [J mol⁻¹], ΔS the entropy [J mol⁻¹ K⁻¹]. Medlyn et al. 2002, Plant Cell Environ
    /// 25:1167-1179, Eq. 17.
    /// </summary>
    public static double PeakedArrhenius(double temperatureCelsius, double activation, double entropy)
    {
        var kelvin = UnitConversion.KelvinFromCelsius(temperatureCelsius);
        return Arrhenius(temperatureCelsius, activation) * (1 + Denatured(ReferenceTemperature, entropy)) / (1 + Denatured(kelvin, entropy));
    }

    /// <summary>
    /// Entropy of Vcmax [J mol⁻¹ K⁻¹] of leaves grown at a temperature [°C]: ΔS = 668.39 − 1.07 Tg. Kattge &amp;
    /// Knorr 2007, Plant Cell Environ 30:1176-1190, Table 3; Tg from 11 to 35.
    /// </summary>
    public static double VcmaxEntropy(double growthTemperature) => 668.39 - (1.07 * growthTemperature);

    /// <summary>
    /// Entropy of Jmax [J mol⁻¹ K⁻¹]: ΔS = 659.70 − 0.75 Tg. Kattge &amp; Knorr 2007, Table 3; Tg from 11 to 35.
    /// </summary>
    public static double JmaxEntropy(double growthTemperature) => 659.70 - (0.75 * growthTemperature);

    /// <summary>
    /// Temperature [°C] at which the peaked form is highest: T = Hd / (ΔS − R ln(Ha / (Hd − Ha))). Medlyn et al.
    /// 2002, Eq. 19.
    /// </summary>
    public static double Optimum(double activation, double entropy) =>
        (Deactivation / (entropy - (GasConstant * Math.Log(activation / (Deactivation - activation))))) - UnitConversion.KelvinAtZeroCelsius;

    private static double Denatured(double kelvin, double entropy) => Math.Exp(((kelvin * entropy) - Deactivation) / (GasConstant * kelvin));
}
