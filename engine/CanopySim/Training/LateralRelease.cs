using CanopySim.Growth;
using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>Which buds a cut sets free: those of the nodes just under it.</summary>
internal static class LateralRelease
{
    // Laterals push on so many nodes under a cut (1 to 3, general, from memory; the fourth partly).
    private const int ReleasedNodes = 4;

    public static void UnderCut(Shoot shoot, GrowthParameters growth)
    {
        foreach (var phytomer in shoot.Phytomers.TakeLast(ReleasedNodes))
        {
            phytomer.Released = true;
            if (phytomer.Lateral is { } lateral) lateral.Release = growth.LateralReleaseByTopping;
        }
    }
}
