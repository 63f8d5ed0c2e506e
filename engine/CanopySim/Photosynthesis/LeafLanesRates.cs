using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using CanopySim.Numerics;
using static CanopySim.Photosynthesis.PhotosynthesisConstants;

namespace CanopySim.Photosynthesis;

/// <summary>
/// Rates and constants of 64 leaves, each at its temperature: those of <see cref="LeafKinetics"/>, the electron transport of
/// <see cref="FarquharModel"/> and the slope term of <see cref="MedlynConductance"/>. With x = (T − 298.15) / (298.15 R T)
/// every response is exp(Ea x), what is denatured too: exp((T ΔS − Hd) / RT) is its value at 25 °C times exp(Hd x). So no
/// exponent is large, and none loses digits of a float.
/// </summary>
internal static class LeafLanesRates
{
    private const float KelvinAtZero = (float)UnitConversion.KelvinAtZeroCelsius;

    private const float PerReference = (float)(1 / (ReferenceTemperature * GasConstant));

    // Keeps 0 / 0 away from a leaf without light or capacity, and is nothing beside any other sum.
    private const float Tiny = 1e-20f;

    public static void Update(LeafLanes lanes, LeafLanesAir air)
    {
        for (var i = 0; i < LeafLanes.Vectors; i++) Update(lanes, air, i);
    }

    /// <summary>Saturation vapor pressure [kPa] as in Weather/SaturationVaporPressure.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> Saturation(Vector256<float> temperature) =>
        0.6108f * VectorExponential.OfBounded(17.27f * temperature / (temperature + Vector256.Create(237.3f)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Update(LeafLanes lanes, LeafLanesAir air, int i)
    {
        var one = Vector256<float>.One;
        var temperature = lanes.Temperature[i];
        var kelvin = temperature + Vector256.Create(KelvinAtZero);
        var shifted = temperature + Vector256.Create(237.3f);
        var inverse = one / (kelvin * shifted);
        var x = (temperature - Vector256.Create(25f)) * (shifted * inverse) * PerReference;
        var perShifted = kelvin * inverse;
        var saturation = 0.6108f * VectorExponential.OfBounded(17.27f * temperature * perShifted);
        lanes.Saturation[i] = saturation;
        lanes.SaturationSlope[i] = 4098f * saturation * perShifted * perShifted;
        var deficit = Lanes.Max(saturation - air.VaporPressure, Vector256.Create((float)MedlynConductance.DeficitFloor));
        lanes.SlopeTerm[i] = lanes.Slope[i] / Vector256.Sqrt(deficit);

        var denatured = Power(x, Deactivation);
        var y = Lanes.Clamp((temperature - air.ClosureStart) * air.PerClosureRange, Vector256<float>.Zero, one);
        var closure = one - (y * y * (Vector256.Create(3f) - (y + y)));
        var capacity = lanes.Capacity[i];
        lanes.Vcmax[i] = air.Vcmax25 * closure * capacity * Power(x, PeakedVcmaxActivation)
            / (one + (air.VcmaxDenatured25 * denatured));
        var jmax = air.Jmax25 * capacity * Power(x, PeakedJmaxActivation) / (one + (air.JmaxDenatured25 * denatured));
        var light = lanes.UsefulLight[i];
        var product = light * jmax;
        var sum = light + jmax;
        var root = Vector256.Sqrt((sum * sum) - (air.Curvature * product));
        lanes.QuarterTransport[i] = closure * 0.5f * product / (sum + root + Vector256.Create(Tiny));

        lanes.Respiration[i] = air.DayRespiration25 * lanes.RespirationFactor[i] * Power(x, DayRespirationActivation);
        lanes.CompensationPoint[i] = (float)Co2CompensationPointAt25 * Power(x, Co2CompensationPointActivation);
        lanes.Michaelis[i] = (float)MichaelisCo2At25 * Power(x, MichaelisCo2Activation)
            * (one + ((float)(Oxygen / MichaelisOxygenAt25) * Power(x, -MichaelisOxygenActivation)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Power(Vector256<float> x, double activation) => VectorExponential.OfBounded(x * (float)activation);
}
