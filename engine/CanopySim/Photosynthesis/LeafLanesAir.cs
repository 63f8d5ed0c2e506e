using System.Runtime.Intrinsics;
using CanopySim.Numerics;
using CanopySim.Weather;
using static CanopySim.Photosynthesis.PhotosynthesisConstants;

namespace CanopySim.Photosynthesis;

/// <summary>
/// The air of one hour and the parameters of its leaves, worked out in double and spread over the lanes.
/// </summary>
internal sealed class LeafLanesAir
{
    public LeafLanesAir(in LeafEnvironment environment, LeafParameters parameters)
    {
        var air = environment.AirTemperatureCelsius;
        var kelvin = UnitConversion.KelvinFromCelsius(air);
        var emissivity = parameters.Emissivity;
        Temperature = Spread(air);
        Kelvin = Spread(kelvin);
        Saturation = Spread(SaturationVaporPressure.At(air));
        SaturationSlope = Spread(SaturationVaporPressure.SlopeAt(air));
        VaporPressure = Spread(environment.VaporPressure);
        Co2 = Spread(environment.Co2);
        LeastSurfaceCo2 = Spread(LeafProblem.LeastSurfaceShare * environment.Co2);
        WindPerLength = Spread(LeafBoundaryLayer.Turbulence * LeafBoundaryLayer.Turbulence
            * Math.Max(LeafBoundaryLayer.WindFloor, environment.WindSpeed) / LeafBoundaryLayer.LengthPerWidth);
        LatentPerConductance = Spread(LeafEnergyBalance.LatentHeat / environment.AirPressure);
        TranspirationPerConductance = Spread(1000 / environment.AirPressure);
        TwiceEmission = Spread(2 * emissivity * LeafEnergyBalance.StefanBoltzmann);

        // Longwave of a blade at air temperature: small, where what it takes up and what it sends out are large.
        NetLongwaveAtAir = LeafEnergyBalance.AbsorbedLongwave(air, environment.VaporPressure, emissivity)
            - (2 * emissivity * LeafEnergyBalance.BlackBody(kelvin));

        Floor = Spread(parameters.StomatalFloor);
        StomatalSlope = parameters.StomatalSlope;
        Curvature = Spread(4 * parameters.ElectronTransportCurvature);
        VcmaxDenatured25 = Spread(Denatured25(TemperatureResponse.VcmaxEntropy(parameters.GrowthTemperature)));
        JmaxDenatured25 = Spread(Denatured25(TemperatureResponse.JmaxEntropy(parameters.GrowthTemperature)));
        Vcmax25 = Spread(parameters.Vcmax25 * (1 + Denatured25(TemperatureResponse.VcmaxEntropy(parameters.GrowthTemperature))));
        Jmax25 = Spread(parameters.Vcmax25 * parameters.JmaxToVcmax
            * (1 + Denatured25(TemperatureResponse.JmaxEntropy(parameters.GrowthTemperature))));
        GuessedVcmax25 = Spread(parameters.Vcmax25);
        DayRespiration25 = Spread(parameters.DayRespiration25);
        ClosureStart = Spread(parameters.HeatClosureStart);
        PerClosureRange = Spread(1 / (parameters.HeatClosureEnd - parameters.HeatClosureStart));
    }

    public Vector256<float> Temperature { get; }

    public Vector256<float> Kelvin { get; }

    public Vector256<float> Saturation { get; }

    public Vector256<float> SaturationSlope { get; }

    public Vector256<float> VaporPressure { get; }

    public Vector256<float> Co2 { get; }

    public Vector256<float> LeastSurfaceCo2 { get; }

    /// <summary>1.4² u / 0.72 [m s⁻¹]; over a width, the square of what boundary-layer conductances go with.</summary>
    public Vector256<float> WindPerLength { get; }

    /// <summary>λ / P [J mol⁻¹ kPa⁻¹].</summary>
    public Vector256<float> LatentPerConductance { get; }

    public Vector256<float> TranspirationPerConductance { get; }

    /// <summary>2 ε σ [W m⁻² K⁻⁴].</summary>
    public Vector256<float> TwiceEmission { get; }

    /// <summary>Longwave balance of a blade as warm as the air [W m⁻²].</summary>
    public double NetLongwaveAtAir { get; }

    public Vector256<float> Floor { get; }

    public double StomatalSlope { get; }

    /// <summary>4 θ.</summary>
    public Vector256<float> Curvature { get; }

    /// <summary>exp((298.15 ΔS − Hd) / (298.15 R)) of Vcmax.</summary>
    public Vector256<float> VcmaxDenatured25 { get; }

    /// <summary>exp((298.15 ΔS − Hd) / (298.15 R)) of Jmax.</summary>
    public Vector256<float> JmaxDenatured25 { get; }

    /// <summary>Vcmax at 25 °C times one and what is denatured there.</summary>
    public Vector256<float> Vcmax25 { get; }

    /// <summary>Jmax at 25 °C times one and what is denatured there.</summary>
    public Vector256<float> Jmax25 { get; }

    public Vector256<float> GuessedVcmax25 { get; }

    public Vector256<float> DayRespiration25 { get; }

    public Vector256<float> ClosureStart { get; }

    public Vector256<float> PerClosureRange { get; }

    private static double Denatured25(double entropy) =>
        Math.Exp(((ReferenceTemperature * entropy) - Deactivation) / (GasConstant * ReferenceTemperature));

    private static Vector256<float> Spread(double value) => Vector256.Create((float)value);
}
