using System.Numerics;
using CanopySim.Numerics;
using CanopySim.Plants;
using CanopySim.Training;

namespace CanopySim.Geometry;

/// <summary>
/// Places a blade at its node: petioles alternate on two sides of the shoot; blades turn their upper side to the open,
/// the alleys on either side of a wall that wires hold or the sky, at an inclination drawn by seed. Inclinations: hedge
/// mean 50° (45 to 60, Mabrouk et al. 1997, from memory), others 35° (30 to 45, from memory); spread, how strongly
/// blades turn to the alley, and petioles that stand off level are assumed.
/// </summary>
public sealed class LeafPlacement(Scenario scenario)
{
    private const double HedgeInclinationDegrees = 50;
    private const double OtherInclinationDegrees = 35;
    private const double InclinationSpreadDegrees = 17;
    private const double PlaneSpreadDegrees = 40;
    private const double LeafSpreadDegrees = 25;

    /// <summary>The blade's frame and the petiole's start.</summary>
    /// <param name="leaf">The leaf.</param>
    /// <param name="node">Where its node is [m].</param>
    /// <param name="axis">Direction of the shoot there.</param>
    public BladeFrame Place(Leaf leaf, Vector3 node, Vector3 axis)
    {
        var seed = scenario.Seed;
        // The plane of the two ranks of leaves stands across the row, more or less; laterals at right angles to their
        // shoot.
        var plane = UnitConversion.RadiansFromDegrees(PlaneSpreadDegrees)
            * SeededValue.Normal(seed, "leaf plane", leaf.Shoot.Id.Value);
        if (leaf.Shoot.Order == 2) plane += 0.5 * Math.PI;
        var turn = plane + (leaf.Rank % 2 == 0 ? Math.PI : 0)
            + (UnitConversion.RadiansFromDegrees(LeafSpreadDegrees)
                * SeededValue.Normal(seed, "leaf turn", leaf.Id.Value));
        var outward = new Vector3((float)Math.Cos(turn), (float)Math.Sin(turn), 0);
        var isHedge = TrellisKeys.HasWalls(scenario.Trellis.Form);
        if (isHedge) outward = TowardsAlley(outward);

        var mean = isHedge ? HedgeInclinationDegrees : OtherInclinationDegrees;
        var inclination = UnitConversion.RadiansFromDegrees(
            Math.Clamp(mean + (InclinationSpreadDegrees * SeededValue.Normal(seed, "leaf inclination", leaf.Id.Value)),
            3, 88));
        var (sin, cos) = ((float)Math.Sin(inclination), (float)Math.Cos(inclination));
        var normal = (sin * outward) + (cos * Vector3.UnitZ);
        var tip = (cos * outward) - (sin * Vector3.UnitZ);
        var petiole = Vector3.Normalize(outward - (0.3f * Vector3.Dot(outward, axis) * axis));
        return new BladeFrame(node + ((float)leaf.PetioleLength * petiole), Vector3.Cross(tip, normal), tip, normal);
    }

    private static Vector3 TowardsAlley(Vector3 outward)
    {
        var alley = new Vector3(outward.X >= 0 ? 1 : -1, 0, 0);
        return Vector3.Normalize(outward + (0.5f * alley));
    }
}
