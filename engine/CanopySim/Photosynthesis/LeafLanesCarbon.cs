using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Photosynthesis;

/// <summary>
/// One Newton step of 64 leaves toward the CO₂ between their cells: the step of <see cref="LeafProblem.At"/>. Assimilation and
/// conductance are carried over the step by their tangents.
/// </summary>
internal static class LeafLanesCarbon
{
    private const float VaporPerCo2 = (float)MedlynConductance.VaporPerCo2;

    public static void Step(Span<LeafLanes> eights, LeafLanesAir air)
    {
        // Three short loops, so that a processor works at several leaves' chains at once.
        foreach (ref var lanes in eights) Demand(ref lanes);
        foreach (ref var lanes in eights) Supply(ref lanes, air);
        foreach (ref var lanes in eights) Change(ref lanes, air);
    }

    // The smaller of V / (Ci + K) of the two processes, compared across so that one division is enough.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Demand(ref LeafLanes lanes)
    {
        var ci = lanes.IntercellularCo2;
        var vcmax = lanes.Vcmax;
        var quarterTransport = lanes.QuarterTransport;
        var compensation = lanes.CompensationPoint;
        var rubiscoCurb = ci + lanes.Michaelis;
        var transportCurb = ci + compensation + compensation;
        var rubisco = Vector256.LessThan(vcmax * transportCurb, quarterTransport * rubiscoCurb);
        var inverseCurb = Vector256<float>.One / Vector256.ConditionalSelect(rubisco, rubiscoCurb, transportCurb);
        var perCo2 = Vector256.ConditionalSelect(rubisco, vcmax, quarterTransport) * inverseCurb;
        var overCompensation = ci - compensation;
        lanes.Net = (perCo2 * overCompensation) - lanes.Respiration;
        lanes.NetByCi = perCo2 * (Vector256<float>.One - (overCompensation * inverseCurb));
    }

    // MedlynConductance.BehindBoundaryLayer; a leaf that takes up nothing has the floor, which does not move.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Supply(ref LeafLanes lanes, LeafLanesAir air)
    {
        var one = Vector256<float>.One;
        var net = lanes.Net;
        var boundary = lanes.BoundaryVapor;
        var slopeTerm = lanes.SlopeTerm;
        var inverseSurface = one / Lanes.Max(air.Co2 - (net * lanes.BoundaryCo2Resistance), air.LeastSurfaceCo2);
        var uptake = Vector256.GreaterThan(net, Vector256<float>.Zero);
        var perCo2 = VaporPerCo2 * inverseSurface;
        var demand = perCo2 * Vector256.ConditionalSelect(uptake, net, Vector256<float>.Zero);
        var linear = demand * slopeTerm;
        var root = Vector256.Sqrt((linear * linear) + (4f * boundary * (boundary + air.Floor + demand)));
        var twiceBoundaryY = linear + root;
        var y = twiceBoundaryY * lanes.HalfPerBoundary;
        var stomatal = air.Floor + demand + (linear * y);

        // One division for two, here and in the resistance.
        var inverse = one / (root * stomatal);
        var byDemand = twiceBoundaryY * ((slopeTerm * y) + one) * (stomatal * inverse);
        lanes.Stomatal = stomatal;
        lanes.StomatalResistance = VaporPerCo2 * (root * inverse);
        lanes.StomatalByNet = Vector256.ConditionalSelect(uptake, byDemand * perCo2 * air.Co2 * inverseSurface, Vector256<float>.Zero);
    }

    // h(Ci) = Ci − Ca + A / gbc + 1.6 A / gs, and its tangent.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Change(ref LeafLanes lanes, LeafLanesAir air)
    {
        var one = Vector256<float>.One;
        var ci = lanes.IntercellularCo2;
        var net = lanes.Net;
        var netByCi = lanes.NetByCi;
        var stomatal = lanes.Stomatal;
        var stomatalByNet = lanes.StomatalByNet;
        var boundaryResistance = lanes.BoundaryCo2Resistance;
        var resistance = lanes.StomatalResistance;
        var excess = ci - air.Co2 + (net * (boundaryResistance + resistance));
        var supplyByNet = boundaryResistance + (resistance * (one - (net * stomatalByNet * resistance * (1 / VaporPerCo2))));
        var change = -excess / (one + (netByCi * supplyByNet));
        var netChange = netByCi * change;
        lanes.Co2Change = change;
        lanes.IntercellularCo2 = Lanes.Max(ci + change, ci * 0.1f);
        lanes.Net = net + netChange;
        lanes.Stomatal = stomatal + (stomatalByNet * netChange);
    }
}
