using CanopySim.Plants;

namespace CanopySim.Training;

/// <summary>
/// Cuts clusters off: down to so many on every shoot, the upper first; or a share of a vine's, the upper of a shoot
/// first and of those the ones of the shortest shoots.
/// </summary>
internal sealed class ClusterThinningWork(WorkPlace place, ClusterThinning step) : IWork
{
    public WorkStep Step => step;

    public string Words => step.ClustersPerShoot is { } most
        ? FormattableString.Invariant($"clusters thinned to at most {most} a shoot")
        : FormattableString.Invariant($"{100 * step.Share:0.#} % of the clusters cut off");

    public void Do(Canopy canopy, WorkTally tally)
    {
        var cuts = new VineCuts(place.Scenario, tally);
        var there = 0;
        foreach (var vine in canopy.Vines)
        {
            var clusters = vine.Shoots.SelectMany(Bearers).ToList();
            there += clusters.Count;
            var going = step.ClustersPerShoot is { } most
                ? clusters.Where(found => found.Place >= most)
                : clusters
                    .OrderByDescending(found => found.Place).ThenBy(found => found.Shoot.Length)
                    .ThenBy(found => found.Shoot.Id.Value)
                    .Take((int)Math.Round((step.Share ?? 0) * clusters.Count, MidpointRounding.AwayFromZero));
            foreach (var found in going.ToList()) cuts.RemoveCluster(vine, found.Bearer);
        }

        if (tally.Clusters > 0) return;
        tally.Warn(
            there == 0 ? "no shoot bore a cluster, so none was cut off"
            : step.ClustersPerShoot is { } count
            ? FormattableString.Invariant($"no shoot bore more than {count} clusters, so none was cut off")
            : FormattableString.Invariant(
                $"a share of {step.Share:0.###} of a vine's clusters is less than one, so none was cut off"));
    }

    // The clusters of a shoot from below, numbered from 0.
    private static IEnumerable<(Shoot Shoot, Phytomer Bearer, int Place)> Bearers(Shoot shoot) =>
        shoot.Phytomers.Where(phytomer => phytomer.Cluster is not null).Select((phytomer, i) => (shoot, phytomer, i));
}
