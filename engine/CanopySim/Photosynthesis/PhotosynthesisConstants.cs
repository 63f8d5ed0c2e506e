namespace CanopySim.Photosynthesis;

/// <summary>
/// Constants of the biochemical model of C3 photosynthesis, as mole fractions at 25 °C with activation energies. The
/// tabulated form of Bernacchi et al. 2001, Plant Cell Environ 24:253-259, doi:10.1111/j.1365-3040.2001.00668.x,
/// Table 1 (value at 25 °C and activation energy); its other form, exp(c − Ea/RT), returns 0.3 % more or less at 25
/// °C (Kc 406.07, Ko 276.90, Γ* 42.89) and is not used. Mole fractions are taken as they are at every air pressure.
/// </summary>
public static class PhotosynthesisConstants
{
    /// <summary>Gas constant [J mol⁻¹ K⁻¹].</summary>
    public const double GasConstant = 8.314;

    /// <summary>25 °C [K], where the capacities are given.</summary>
    public const double ReferenceTemperature = 298.15;

    /// <summary>Oxygen of the air [mmol mol⁻¹]. Common practice, no source.</summary>
    public const double Oxygen = 210;

    /// <summary>Michaelis constant of Rubisco for CO₂, Kc [µmol mol⁻¹]. Bernacchi et al. 2001.</summary>
    public const double MichaelisCo2At25 = 404.9;

    /// <summary>Michaelis constant of Rubisco for O₂, Ko [mmol mol⁻¹]. Bernacchi et al. 2001.</summary>
    public const double MichaelisOxygenAt25 = 278.4;

    /// <summary>CO₂ compensation point without day respiration, Γ* [µmol mol⁻¹]. Bernacchi et al. 2001.</summary>
    public const double Co2CompensationPointAt25 = 42.75;

    /// <summary>Activation energies [J mol⁻¹]. Bernacchi et al. 2001.</summary>
    public const double MichaelisCo2Activation = 79_430;

    public const double MichaelisOxygenActivation = 36_380;

    public const double Co2CompensationPointActivation = 37_830;

    public const double DayRespirationActivation = 46_390;

    /// <summary>Activation of Vcmax [J mol⁻¹] in the plain Arrhenius form. Bernacchi et al. 2001.</summary>
    public const double VcmaxActivation = 65_330;

    /// <summary>
    /// Activation of Jmax [J mol⁻¹] in the plain Arrhenius form. Bernacchi et al. 2003, Plant Cell Environ
    /// 26:1419-1430.
    /// </summary>
    public const double JmaxActivation = 43_540;

    /// <summary>
    /// Activation of the use of triose phosphates [J mol⁻¹]. Harley et al. 1992, Plant Cell Environ 15:271-282.
    /// </summary>
    public const double TriosePhosphateActivation = 53_100;

    /// <summary>
    /// Activation of Vcmax [J mol⁻¹] in the peaked form. Kattge &amp; Knorr 2007, Plant Cell Environ 30:1176-1190.
    /// </summary>
    public const double PeakedVcmaxActivation = 71_513;

    /// <summary>Activation of Jmax [J mol⁻¹] in the peaked form. Kattge &amp; Knorr 2007, from memory.</summary>
    public const double PeakedJmaxActivation = 49_884;

    /// <summary>
    /// Deactivation of Vcmax and Jmax [J mol⁻¹]. Medlyn et al. 2002, Plant Cell Environ 25:1167-1179.
    /// </summary>
    public const double Deactivation = 200_000;

    /// <summary>
    /// Share of absorbed PAR that does not reach photochemistry, f. 0.15, from memory: von Caemmerer 2000.
    /// </summary>
    public const double SpectralLoss = 0.15;
}
