using CanopySim.Numerics;
using CanopySim.Plants;

namespace CanopySim.Fruit;

/// <summary>
/// Gives shoots their clusters as the nodes that bear them appear: opposite the leaf at the lowest places of the rhythm above
/// the first two nodes (ranks 3, 4, 6, 7), as many as the shoot's share of the mean number draws.
/// </summary>
public static class ClusterPlacement
{
    private static readonly int[] BearingRanks = [3, 4, 6, 7, 9];

    /// <summary>Places the clusters that are due on a vine's shoots.</summary>
    public static void Place(Vine vine, double clustersPerShoot, ulong seed)
    {
        foreach (var shoot in vine.Shoots)
        {
            var count = (int)(clustersPerShoot + SeededValue.Uniform(seed, "clusters on a shoot", shoot.Id.Value));
            for (var i = 0; i < Math.Min(count, BearingRanks.Length); i++)
            {
                if (shoot.Phytomers.Count < BearingRanks[i]) break;
                var phytomer = shoot.Phytomers[BearingRanks[i] - 1];
                if (!phytomer.ClusterRemoved) phytomer.Cluster ??= new Cluster();
            }
        }
    }
}
