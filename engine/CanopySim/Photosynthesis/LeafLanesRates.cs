using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using CanopySim.Numerics;
using static CanopySim.Photosynthesis.PhotosynthesisConstants;

namespace CanopySim.Photosynthesis;

/// <summary>
/// Rates and constants of 64 leaves, each at its temperature: those of <see cref="LeafKinetics"/>, the electron transport of
/// <see cref="FarquharModel"/> and the slope term of <see cref="MedlynConductance"/>. With x = (T − 298.15) / T every response
/// is exp(Ea x / 298.15 R), and what is denatured too: exp((T ΔS − Hd) / RT) is its value at 25 °C times exp(Hd x / 298.15 R).
/// So no exponent is large, and none loses digits of a float.
/// </summary>
internal static class LeafLanesRates
{
    private const float KelvinAtZero = (float)UnitConversion.KelvinAtZeroCelsius;

    // FAO-56 Eq. 11 and 13, as in SaturationVaporPressure; the exponent for powers of two.
    private const float SaturationExponent = (float)(17.27 * VectorExponential.PerNatural);
    private const float SaturationAtZero = 0.6108f;
    private const float SaturationOffset = 237.3f;
    private const float SaturationSlopeFactor = 4098;

    // Keeps 0 / 0 away from a leaf without light or capacity, and is nothing beside any other sum.
    private const float Tiny = 1e-20f;

    /// <summary>Saturation vapor pressure [kPa].</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> Saturation(Vector256<float> temperature) =>
        SaturationAtZero * VectorExponential.PowerOfTwo(
            SaturationExponent * temperature / (temperature + Vector256.Create(SaturationOffset)));

    public static void Update(Span<LeafLanes> eights, LeafLanesAir air)
    {
        // Short loops, so that a processor works at several leaves' chains at once.
        foreach (ref var lanes in eights) Exponents(ref lanes);
        foreach (ref var lanes in eights) Water(ref lanes, air);
        foreach (ref var lanes in eights) Constants(ref lanes, air);
        foreach (ref var lanes in eights) Capacities(ref lanes, air);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Exponents(ref LeafLanes lanes)
    {
        var temperature = lanes.Temperature;
        var kelvin = temperature + Vector256.Create(KelvinAtZero);
        var shifted = temperature + Vector256.Create(SaturationOffset);
        var inverse = Vector256<float>.One / (kelvin * shifted);
        lanes.Exponent = (temperature - Vector256.Create((float)(ReferenceTemperature - UnitConversion.KelvinAtZeroCelsius)))
            * (shifted * inverse);
        lanes.PerShifted = kelvin * inverse;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Power(Vector256<float> exponent, double activation) => VectorExponential.PowerOfTwo(
        exponent * (float)(activation * (VectorExponential.PerNatural / (ReferenceTemperature * GasConstant))));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Water(ref LeafLanes lanes, LeafLanesAir air)
    {
        var perShifted = lanes.PerShifted;
        var saturation = SaturationAtZero * VectorExponential.PowerOfTwo(SaturationExponent * lanes.Temperature * perShifted);
        lanes.Saturation = saturation;
        lanes.SaturationSlope = SaturationSlopeFactor * saturation * perShifted * perShifted;
        var deficit = Lanes.Max(saturation - air.VaporPressure, Vector256.Create((float)MedlynConductance.DeficitFloor));
        lanes.SlopeTerm = lanes.Slope / Vector256.Sqrt(deficit);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Constants(ref LeafLanes lanes, LeafLanesAir air)
    {
        var x = lanes.Exponent;
        lanes.Respiration = air.DayRespiration25 * lanes.RespirationFactor * Power(x, DayRespirationActivation);
        lanes.CompensationPoint = (float)Co2CompensationPointAt25 * Power(x, Co2CompensationPointActivation);
        lanes.Michaelis = (float)MichaelisCo2At25 * Power(x, MichaelisCo2Activation)
            * (Vector256<float>.One + ((float)(Oxygen / MichaelisOxygenAt25) * Power(x, -MichaelisOxygenActivation)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Capacities(ref LeafLanes lanes, LeafLanesAir air)
    {
        var one = Vector256<float>.One;
        var x = lanes.Exponent;
        var denatured = Power(x, Deactivation);
        var y = Lanes.Clamp((lanes.Temperature - air.ClosureStart) * air.PerClosureRange, Vector256<float>.Zero, one);
        var closure = one - (y * y * (Vector256.Create(3f) - (y + y)));
        var capacity = lanes.Capacity;
        var jmax = air.Jmax25 * capacity * Power(x, PeakedJmaxActivation) / (one + (air.JmaxDenatured25 * denatured));
        lanes.Vcmax = air.Vcmax25 * closure * capacity * Power(x, PeakedVcmaxActivation) / (one + (air.VcmaxDenatured25 * denatured));
        var light = lanes.UsefulLight;
        var product = light * jmax;
        var sum = light + jmax;
        var root = Vector256.Sqrt((sum * sum) - (air.Curvature * product));
        lanes.QuarterTransport = closure * 0.5f * product / (sum + root + Vector256.Create(Tiny));
    }
}
