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

    public static void Step(LeafLanes lanes, LeafLanesAir air)
    {
        for (var i = 0; i < LeafLanes.Vectors; i++) Step(lanes, air, i);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Step(LeafLanes lanes, LeafLanesAir air, int i)
    {
        var one = Vector256<float>.One;
        var ci = lanes.IntercellularCo2[i];
        var vcmax = lanes.Vcmax[i];
        var quarterTransport = lanes.QuarterTransport[i];
        var compensation = lanes.CompensationPoint[i];
        var rubiscoCurb = ci + lanes.Michaelis[i];
        var transportCurb = ci + compensation + compensation;
        var rubisco = Vector256.LessThan(vcmax * transportCurb, quarterTransport * rubiscoCurb);
        var inverseCurb = one / Vector256.ConditionalSelect(rubisco, rubiscoCurb, transportCurb);
        var perCo2 = Vector256.ConditionalSelect(rubisco, vcmax, quarterTransport) * inverseCurb;
        var overCompensation = ci - compensation;
        var net = (perCo2 * overCompensation) - lanes.Respiration[i];
        var netByCi = perCo2 * (one - (overCompensation * inverseCurb));

        // MedlynConductance.BehindBoundaryLayer; a leaf that takes up nothing has the floor, which does not move.
        var boundaryResistance = lanes.BoundaryCo2Resistance[i];
        var boundary = lanes.BoundaryVapor[i];
        var slopeTerm = lanes.SlopeTerm[i];
        var inverseSurface = one / Lanes.Max(air.Co2 - (net * boundaryResistance), air.LeastSurfaceCo2);
        var uptake = Vector256.GreaterThan(net, Vector256<float>.Zero);
        var demand = VaporPerCo2 * Vector256.ConditionalSelect(uptake, net, Vector256<float>.Zero) * inverseSurface;
        var linear = demand * slopeTerm;
        var constant = boundary + air.Floor + demand;
        var root = Vector256.Sqrt((linear * linear) + (4f * boundary * constant));
        var twiceBoundaryY = linear + root;
        var y = 0.5f * twiceBoundaryY / boundary;
        var byDemand = twiceBoundaryY * ((slopeTerm * y) + one) / root;
        var stomatal = air.Floor + demand + (linear * y);
        var stomatalByNet = Vector256.ConditionalSelect(
            uptake, byDemand * VaporPerCo2 * air.Co2 * inverseSurface * inverseSurface, Vector256<float>.Zero);

        var resistance = Vector256.Create(VaporPerCo2) / stomatal;
        var excess = ci - air.Co2 + (net * (boundaryResistance + resistance));
        var supplyByNet = boundaryResistance
            + (resistance * (one - (net * stomatalByNet * resistance * (1 / VaporPerCo2))));
        var change = -excess / (one + (netByCi * supplyByNet));
        lanes.Co2Change[i] = change;
        lanes.IntercellularCo2[i] = Lanes.Max(ci + change, ci * 0.1f);
        var netChange = netByCi * change;
        lanes.Net[i] = net + netChange;
        lanes.Stomatal[i] = stomatal + (stomatalByNet * netChange);
    }
}
