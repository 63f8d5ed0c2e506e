using CanopySim.Growth;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>Which buds a cut sets free: those of the nodes just under it, the uppermost most.</summary>
internal static class LateralRelease
{
    // Laterals push on 1 to 3 nodes under a cut (general, from memory), the uppermost strongest; the shares are
    // assumed.
    private static readonly double[] Strengths = [1, 0.7, 0.45, 0.2];

    public static void UnderCut(Shoot shoot, GrowthParameters growth)
    {
        for (var below = 0; below < Math.Min(Strengths.Length, shoot.Phytomers.Count); below++)
        {
            var phytomer = shoot.Phytomers[^(below + 1)];
            phytomer.Released = true;
            (phytomer.ReleaseStrength, phytomer.UnitsSinceRelease) = (Strengths[below], 0);
            if (phytomer.Lateral is { } lateral) lateral.Release = growth.LateralReleaseByTopping;
        }
    }
}
