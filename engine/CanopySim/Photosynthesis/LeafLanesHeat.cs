using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// Moves the temperatures of 64 leaves toward the root of <see cref="LeafEnergyBalance"/> by the secant, and ends the solution:
/// the last step runs along a straight line, and the lanes for which that was too far are flagged.
/// </summary>
internal static class LeafLanesHeat
{
    // Trial temperatures stay this near the air's [K]: no leaf at rest is as far, and every response is finite there.
    private const float Coldest = 40;
    private const float Hottest = 70;

    // Bounds of the secant over the slope at fixed conductances: those of LeafTemperatureSearch.
    private const float LeastDecline = 0.3f;
    private const float MostDecline = 4;

    // A secant over less [K] is rounding.
    private const float ShortestSecant = 5e-4f;

    // A last step is this share of the one before at most, or this short [K]: the line is not drawn out.
    private const float LongestShare = 0.5f;
    private const float ShortStep = 2e-4f;

    /// <summary>Rest of the balance [W m⁻²] at a vapor conductance, and its fall per kelvin at fixed conductances.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> Residual(
        in LeafLanes lanes,
        LeafLanesAir air,
        Vector256<float> temperature,
        Vector256<float> saturation,
        Vector256<float> vaporConductance,
        out Vector256<float> decline)
    {
        // σ (Tl⁴ − Ta⁴) as a product: the powers are large and near each other.
        var above = temperature - air.Temperature;
        var kelvin = air.Kelvin + above;
        var emission = air.TwiceEmission * (kelvin + air.Kelvin) * ((kelvin * kelvin) + (air.Kelvin * air.Kelvin));
        var latent = air.LatentPerConductance * vaporConductance;
        decline = (4f * air.TwiceEmission * kelvin * kelvin * kelvin) + lanes.Sensible + (latent * lanes.SaturationSlope);
        return lanes.NetRadiationAtAir - ((emission + lanes.Sensible) * above) - (latent * (saturation - air.VaporPressure));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<float> VaporConductance(in LeafLanes lanes) =>
        lanes.Stomatal * lanes.BoundaryVapor / (lanes.Stomatal + lanes.BoundaryVapor);

    /// <summary>A step from the slope at fixed conductances.</summary>
    public static void FirstStep(Span<LeafLanes> eights, LeafLanesAir air)
    {
        foreach (ref var lanes in eights)
        {
            var residual = ResidualNow(lanes, air, out var decline);
            lanes.Decline = decline;
            Move(ref lanes, air, residual);
        }
    }

    /// <summary>A step from the secant.</summary>
    public static void Step(Span<LeafLanes> eights, LeafLanesAir air)
    {
        foreach (ref var lanes in eights)
        {
            var residual = ResidualNow(lanes, air, out var decline);
            lanes.Decline = Secant(lanes, residual, decline, out _);
            Move(ref lanes, air, residual);
        }
    }

    /// <summary>
    /// The last step, and a bit for each lane that is not done: it moved too far for a straight line, its slope was clipped, or
    /// CO₂ between its cells had not settled, here or where the line begins.
    /// </summary>
    public static ulong Finish(Span<LeafLanes> eights, LeafLanesAir air, in LeafLanesTolerance tolerance)
    {
        var flagged = 0UL;
        for (var i = 0; i < eights.Length; i++)
        {
            var unsettled = Finish(ref eights[i], air, tolerance);
            flagged |= (ulong)unsettled.ExtractMostSignificantBits() << (i * Vector256<float>.Count);
        }

        return flagged;
    }

    private static Vector256<float> Finish(ref LeafLanes lanes, LeafLanesAir air, in LeafLanesTolerance tolerance)
    {
        var residual = ResidualNow(lanes, air, out var decline);
        var temperature = lanes.Temperature;
        var moved = temperature - lanes.LastTemperature;
        var change = residual / Secant(lanes, residual, decline, out var clipped);
        var far = Vector256.Abs(change);
        var within = Vector256.LessThan(far, Vector256.Abs(moved) * LongestShare)
            | Vector256.LessThan(far, Vector256.Create(ShortStep));

        // Where the step before was no step, the line has no direction.
        var line = Vector256.GreaterThan(Vector256.Abs(moved), Vector256.Create(ShortestSecant));
        var longest = Vector256.Create(LongestShare);
        var share = Vector256.ConditionalSelect(line, Lanes.Clamp(change / moved, -longest, longest), Vector256<float>.Zero);
        var settled = Vector256.AndNot(within, clipped)
            & Vector256.LessThan(far, Vector256.Create(tolerance.Step))
            & Vector256.LessThan(far * Vector256.Abs(moved), Vector256.Create(tolerance.StepsProduct))
            & Vector256.LessThan(Vector256.Abs(lanes.Co2Change), Vector256.Create(tolerance.Co2))
            & Vector256.LessThan(Vector256.Abs(share * lanes.LastCo2Change), Vector256.Create(tolerance.Co2));
        temperature += change;
        var respiration = Carried(lanes.Respiration, lanes.LastRespiration, share);
        var gross = Lanes.Max(Carried(lanes.Net, lanes.LastNet, share) + respiration, Vector256<float>.Zero);
        lanes.Temperature = temperature;
        lanes.Respiration = respiration;
        lanes.Net = gross - respiration;
        lanes.Stomatal = Lanes.Max(Carried(lanes.Stomatal, lanes.LastStomatal, share), air.Floor);
        lanes.IntercellularCo2 = Carried(lanes.IntercellularCo2, lanes.LastCo2, share);
        var deficit = LeafLanesRates.Saturation(temperature) - air.VaporPressure;
        lanes.Transpiration = air.TranspirationPerConductance * VaporConductance(lanes) * deficit;
        return Vector256.OnesComplement(settled);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> ResidualNow(in LeafLanes lanes, LeafLanesAir air, out Vector256<float> decline) =>
        Residual(lanes, air, lanes.Temperature, lanes.Saturation, VaporConductance(lanes), out decline);

    // Decline of the balance from the last two temperatures; clipped where it is flat or backward.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Secant(
        in LeafLanes lanes, Vector256<float> residual, Vector256<float> decline, out Vector256<float> clipped)
    {
        var moved = lanes.Temperature - lanes.LastTemperature;
        var secant = (lanes.LastResidual - residual) / moved;
        var kept = Lanes.Clamp(secant, decline * LeastDecline, decline * MostDecline);
        var line = Vector256.GreaterThan(Vector256.Abs(moved), Vector256.Create(ShortestSecant));
        clipped = Vector256.AndNot(line, Vector256.Equals(kept, secant));
        return Vector256.ConditionalSelect(line, kept, lanes.Decline);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Move(ref LeafLanes lanes, LeafLanesAir air, Vector256<float> residual)
    {
        var temperature = lanes.Temperature;
        lanes.LastTemperature = temperature;
        lanes.LastResidual = residual;
        lanes.LastCo2 = lanes.IntercellularCo2;
        lanes.LastCo2Change = lanes.Co2Change;
        lanes.LastNet = lanes.Net;
        lanes.LastRespiration = lanes.Respiration;
        lanes.LastStomatal = lanes.Stomatal;
        lanes.Temperature = Lanes.Clamp(
            temperature + (residual / lanes.Decline),
            air.Temperature - Vector256.Create(Coldest),
            air.Temperature + Vector256.Create(Hottest));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Carried(Vector256<float> value, Vector256<float> last, Vector256<float> share) =>
        value + (share * (value - last));
}

/// <summary>How far the last steps may have gone.</summary>
/// <param name="Step">Last step of temperature [K].</param>
/// <param name="StepsProduct">Product of the last two [K²], which the error of the line goes with.</param>
/// <param name="Co2">Last step of CO₂ between the cells [µmol mol⁻¹].</param>
internal readonly record struct LeafLanesTolerance(float Step, float StepsProduct, float Co2);
