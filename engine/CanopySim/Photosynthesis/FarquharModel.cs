namespace CanopySim.Photosynthesis;

/// <summary>
/// Biochemistry of C3 photosynthesis: Farquhar, von Caemmerer &amp; Berry 1980, Planta 149:78-90,
/// doi:10.1007/BF00386231. Rates [µmol m⁻² s⁻¹] of one-sided leaf area, CO₂ as mole fractions [µmol mol⁻¹].
/// </summary>
public static class FarquharModel
{
    /// <summary>Km = Kc (1 + O / Ko) [µmol mol⁻¹] at a leaf temperature [°C].</summary>
    public static double MichaelisAt(double leafTemperatureCelsius)
    {
        var co2 = PhotosynthesisConstants.MichaelisCo2At25
            * TemperatureResponse.Arrhenius(leafTemperatureCelsius, PhotosynthesisConstants.MichaelisCo2Activation);
        var oxygen = PhotosynthesisConstants.MichaelisOxygenAt25
            * TemperatureResponse.Arrhenius(leafTemperatureCelsius, PhotosynthesisConstants.MichaelisOxygenActivation);
        return co2 * (1 + (PhotosynthesisConstants.Oxygen / oxygen));
    }

    /// <summary>Γ* [µmol mol⁻¹] at a leaf temperature [°C].</summary>
    public static double Co2CompensationPointAt(double leafTemperatureCelsius) =>
        PhotosynthesisConstants.Co2CompensationPointAt25
        * TemperatureResponse.Arrhenius(leafTemperatureCelsius, PhotosynthesisConstants.Co2CompensationPointActivation);

    /// <summary>Light that drives electron transport [µmol m⁻² s⁻¹]: I₂ = absorbed PAR photons · (1 − f) / 2.</summary>
    public static double UsefulLight(double absorbedPpfd) => absorbedPpfd * ((1 - PhotosynthesisConstants.SpectralLoss) / 2);

    /// <summary>
    /// Electron transport J: the smaller root of θ J² − (I₂ + Jmax) J + I₂ Jmax = 0, in the form J = 2 I₂ Jmax / (S +
    /// √(S² − 4 θ I₂ Jmax)), S = I₂ + Jmax, which does not cancel when one of them is small. Farquhar &amp; Wong
    /// 1984, Aust J Plant Physiol 11:191-210.
    /// </summary>
    public static double ElectronTransport(double usefulLight, double jmax, double curvature)
    {
        var product = usefulLight * jmax;
        if (product <= 0) return 0;
        var sum = usefulLight + jmax;
        return 2 * product / (sum + Math.Sqrt((sum * sum) - (4 * curvature * product)));
    }

    /// <summary>Rubisco-limited gross assimilation: Ac = Vcmax (Ci − Γ*) / (Ci + Km).</summary>
    public static double RubiscoLimited(double intercellularCo2, double vcmax, double compensationPoint, double michaelis) =>
        vcmax * (intercellularCo2 - compensationPoint) / (intercellularCo2 + michaelis);

    /// <summary>Gross assimilation limited by electron transport: Aj = J/4 (Ci − Γ*) / (Ci + 2 Γ*).</summary>
    public static double ElectronTransportLimited(double intercellularCo2, double electronTransport, double compensationPoint) =>
        electronTransport / 4 * (intercellularCo2 - compensationPoint) / (intercellularCo2 + (2 * compensationPoint));

    /// <summary>
    /// Gross assimilation: the smaller carboxylation times (1 − Γ*/Ci). Above Γ* that is min(Ac, Aj); below it the
    /// smaller of the net rates would be the faster process, so the carboxylations are compared. With a use of triose
    /// phosphates [µmol m⁻² s⁻¹] the rate is no more than three times that; without one it does not limit.
    /// </summary>
    public static double GrossAssimilation(
        double intercellularCo2,
        double vcmax,
        double electronTransport,
        double compensationPoint,
        double michaelis,
        double triosePhosphateUse = double.PositiveInfinity)
    {
        var carboxylationByCo2 = Math.Min(
            vcmax / (intercellularCo2 + michaelis),
            electronTransport / (4 * (intercellularCo2 + (2 * compensationPoint))));
        return Math.Min(carboxylationByCo2 * (intercellularCo2 - compensationPoint), 3 * triosePhosphateUse);
    }
}
