using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>Puts leaves into lanes, and gives each its first temperature and first CO₂ between the cells.</summary>
internal static class LeafLanesInput
{
    /// <summary>
    /// Up to 64 leaves by their numbers; a lane left over repeats the last leaf.
    /// </summary>
    public static void Fill(
        Span<LeafLanes> eights, LeafLanesAir air, ReadOnlySpan<LeafState> leaves, ReadOnlySpan<int> numbers)
    {
        var place = 0;
        foreach (ref var lanes in eights)
        {
            var light = LeafBlock.Each(ref lanes.UsefulLight);
            var capacity = LeafBlock.Each(ref lanes.Capacity);
            var respiration = LeafBlock.Each(ref lanes.RespirationFactor);
            var slope = LeafBlock.Each(ref lanes.Slope);
            var width = LeafBlock.Each(ref lanes.BoundaryVapor);
            var radiation = LeafBlock.Each(ref lanes.NetRadiationAtAir);
            for (var lane = 0; lane < Vector256<float>.Count; lane++)
            {
                ref readonly var leaf = ref leaves[numbers[Math.Min(place++, numbers.Length - 1)]];
                light[lane] = (float)FarquharModel.UsefulLight(leaf.AbsorbedPpfd);
                capacity[lane] = (float)leaf.CapacityFactor;
                respiration[lane] = (float)leaf.RespirationFactor;
                slope[lane] = (float)(air.StomatalSlope * leaf.WaterStressFactor);
                width[lane] = (float)leaf.Width;
                radiation[lane] = (float)(leaf.AbsorbedShortwave + air.NetLongwaveAtAir);
            }
        }

        foreach (ref var lanes in eights) Begin(ref lanes, air);
    }

    // The boundary layer of LeafBoundaryLayer and the first steps of LeafProblem.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Begin(ref LeafLanes lanes, LeafLanesAir air)
    {
        var root = Vector256.Sqrt(air.WindPerLength / lanes.BoundaryVapor);
        var boundary = root * (float)LeafBoundaryLayer.VaporFactor;
        lanes.BoundaryVapor = boundary;
        lanes.HalfPerBoundary = Vector256.Create(0.5f) / boundary;
        lanes.BoundaryCo2Resistance = Vector256<float>.One / (root * (float)LeafBoundaryLayer.Co2Factor);
        var sensible = root * (float)(2 * LeafEnergyBalance.SpecificHeat * LeafBoundaryLayer.HeatFactor);
        lanes.Sensible = sensible;

        var deficit = air.Saturation - air.VaporPressure;
        var slopeTerm = lanes.Slope / Vector256.Sqrt(Lanes.Max(deficit, Vector256.Create((float)MedlynConductance.DeficitFloor)));
        lanes.IntercellularCo2 = air.Co2 * slopeTerm / (Vector256<float>.One + slopeTerm);

        var light = lanes.UsefulLight;
        var vcmax = air.GuessedVcmax25 * lanes.Capacity;
        var assimilation = 0.3f * vcmax * light / (light + (0.6f * vcmax) + Vector256<float>.One);
        var stomatal = air.Floor + ((float)MedlynConductance.VaporPerCo2 * (Vector256<float>.One + slopeTerm) * assimilation / air.Co2);
        var latent = air.LatentPerConductance * (stomatal * boundary / (stomatal + boundary));
        var residual = lanes.NetRadiationAtAir - (latent * deficit);
        var decline = (4 * air.TwiceEmission * air.Kelvin * air.Kelvin * air.Kelvin) + sensible + (latent * air.SaturationSlope);
        lanes.Temperature = air.Temperature + (residual / decline);
    }
}
