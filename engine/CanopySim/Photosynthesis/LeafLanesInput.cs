using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>Puts leaves into lanes, and gives each its first temperature and first CO₂ between the cells.</summary>
internal static class LeafLanesInput
{
    /// <summary>
    /// Up to 64 leaves by their numbers; a lane left over repeats the last leaf.
    /// </summary>
    public static void Fill(LeafLanes lanes, LeafLanesAir air, ReadOnlySpan<LeafState> leaves, ReadOnlySpan<int> numbers)
    {
        var light = Floats(lanes.UsefulLight);
        var capacity = Floats(lanes.Capacity);
        var respiration = Floats(lanes.RespirationFactor);
        var slope = Floats(lanes.Slope);
        var width = Floats(lanes.BoundaryVapor);
        var radiation = Floats(lanes.NetRadiationAtAir);
        for (var lane = 0; lane < LeafLanes.Count; lane++)
        {
            ref readonly var leaf = ref leaves[numbers[Math.Min(lane, numbers.Length - 1)]];
            light[lane] = (float)FarquharModel.UsefulLight(leaf.AbsorbedPpfd);
            capacity[lane] = (float)leaf.CapacityFactor;
            respiration[lane] = (float)leaf.RespirationFactor;
            slope[lane] = (float)(air.StomatalSlope * leaf.WaterStressFactor);
            width[lane] = (float)leaf.Width;
            radiation[lane] = (float)(leaf.AbsorbedShortwave + air.NetLongwaveAtAir);
        }

        for (var i = 0; i < LeafLanes.Vectors; i++) Begin(lanes, air, i);
    }

    public static Span<float> Floats(Vector256<float>[] vectors) => MemoryMarshal.Cast<Vector256<float>, float>(vectors.AsSpan());

    // The boundary layer of LeafBoundaryLayer and the first steps of LeafProblem.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Begin(LeafLanes lanes, LeafLanesAir air, int i)
    {
        var root = Vector256.Sqrt(air.WindPerLength / lanes.BoundaryVapor[i]);
        var boundary = root * (float)LeafBoundaryLayer.VaporFactor;
        lanes.BoundaryVapor[i] = boundary;
        lanes.BoundaryCo2Resistance[i] = Vector256<float>.One / (root * (float)LeafBoundaryLayer.Co2Factor);
        var sensible = root * (float)(2 * LeafEnergyBalance.SpecificHeat * LeafBoundaryLayer.HeatFactor);
        lanes.Sensible[i] = sensible;

        var deficit = air.Saturation - air.VaporPressure;
        var slopeTerm = lanes.Slope[i] / Vector256.Sqrt(Lanes.Max(deficit, Vector256.Create((float)MedlynConductance.DeficitFloor)));
        lanes.IntercellularCo2[i] = air.Co2 * slopeTerm / (Vector256<float>.One + slopeTerm);

        var light = lanes.UsefulLight[i];
        var vcmax = air.GuessedVcmax25 * lanes.Capacity[i];
        var assimilation = 0.3f * vcmax * light / (light + (0.6f * vcmax) + Vector256<float>.One);
        var stomatal = air.Floor + ((float)MedlynConductance.VaporPerCo2 * (Vector256<float>.One + slopeTerm) * assimilation / air.Co2);
        var latent = air.LatentPerConductance * (stomatal * boundary / (stomatal + boundary));
        var residual = lanes.NetRadiationAtAir[i] - (latent * deficit);
        var decline = (4 * air.TwiceEmission * air.Kelvin * air.Kelvin * air.Kelvin) + sensible + (latent * air.SaturationSlope);
        lanes.Temperature[i] = air.Temperature + (residual / decline);
    }
}
