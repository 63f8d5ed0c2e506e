using CanopySim.Numerics;
using static CanopySim.Photosynthesis.PhotosynthesisConstants;

namespace CanopySim.Photosynthesis;

/// <summary>
/// The biochemistry of one kind of leaf at any temperature: the responses of <see cref="TemperatureResponse"/> with
/// what does not depend on leaf temperature worked out once, because the leaf solution asks for them some twenty
/// million times a season.
/// </summary>
internal readonly struct LeafKinetics
{
    private readonly double _vcmax25;
    private readonly double _jmax25;
    private readonly double _dayRespiration25;
    private readonly double _vcmaxEntropyFactor;
    private readonly double _jmaxEntropyFactor;
    private readonly double _closureStart;
    private readonly double _closureEnd;

    public LeafKinetics(LeafParameters parameters)
    {
        var vcmaxEntropy = TemperatureResponse.VcmaxEntropy(parameters.GrowthTemperature);
        var jmaxEntropy = TemperatureResponse.JmaxEntropy(parameters.GrowthTemperature);

        // exp((T ΔS − Hd) / RT) = exp(ΔS / R) · exp(−Hd / RT): Vcmax and Jmax share the second factor.
        _vcmaxEntropyFactor = Math.Exp(vcmaxEntropy / GasConstant);
        _jmaxEntropyFactor = Math.Exp(jmaxEntropy / GasConstant);
        var denatured25 = Math.Exp(-Deactivation / (GasConstant * ReferenceTemperature));
        _vcmax25 = parameters.Vcmax25 * (1 + (_vcmaxEntropyFactor * denatured25));
        _jmax25 = parameters.Vcmax25 * parameters.JmaxToVcmax * (1 + (_jmaxEntropyFactor * denatured25));
        _dayRespiration25 = parameters.DayRespiration25;
        _closureStart = parameters.HeatClosureStart;
        _closureEnd = parameters.HeatClosureEnd;
    }

    /// <summary>Rates and constants at a leaf temperature [°C].</summary>
    public LeafRates At(double temperatureCelsius)
    {
        var kelvin = UnitConversion.KelvinFromCelsius(temperatureCelsius);
        var x = (kelvin - ReferenceTemperature) / (ReferenceTemperature * GasConstant * kelvin);
        var denatured = Math.Exp(-Deactivation / (GasConstant * kelvin));
        var co2 = MichaelisCo2At25 * Math.Exp(MichaelisCo2Activation * x);
        var oxygen = Math.Exp(-MichaelisOxygenActivation * x) * (Oxygen / MichaelisOxygenAt25);
        var closure = HeatClosure.At(temperatureCelsius, _closureStart, _closureEnd);
        return new(
            _vcmax25 * closure * Math.Exp(PeakedVcmaxActivation * x) / (1 + (_vcmaxEntropyFactor * denatured)),
            _jmax25 * Math.Exp(PeakedJmaxActivation * x) / (1 + (_jmaxEntropyFactor * denatured)),
            closure,
            _dayRespiration25 * Math.Exp(DayRespirationActivation * x),
            Co2CompensationPointAt25 * Math.Exp(Co2CompensationPointActivation * x),
            co2 * (1 + oxygen));
    }
}

/// <summary>
/// Rates [µmol m⁻² s⁻¹] and constants [µmol mol⁻¹] at one leaf temperature, before the factors of a leaf.
/// </summary>
/// <param name="Vcmax">Vcmax, times the heat closure.</param>
/// <param name="Jmax">Jmax; the heat closure multiplies the electron transport that comes of it.</param>
/// <param name="HeatClosure">Share that heat leaves.</param>
/// <param name="DayRespiration">Rd.</param>
/// <param name="CompensationPoint">Γ*.</param>
/// <param name="Michaelis">Km = Kc (1 + O / Ko).</param>
internal readonly record struct LeafRates(
    double Vcmax, double Jmax, double HeatClosure, double DayRespiration, double CompensationPoint, double Michaelis);
