using CanopySim.Plants;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class ClusterThinningTests
{
    private static readonly DateOnly Day = WorkCase.Day;

    [Fact]
    public void Upper_clusters_go_and_do_not_come_again()
    {
        var work = Case(20, new ClusterThinning { On = Day, ClustersPerShoot = 1 });
        var before = Bearing(work);
        Assert.Contains(before.Values, ranks => ranks.Length > 1);
        work.Do();
        Assert.All(Bearing(work), shoot => Assert.Equal(before[shoot.Key].Take(1), shoot.Value));
        // Before bloom clusters are placed every day.
        work.Grown.Grow(10);
        Assert.All(Bearing(work), shoot => Assert.Equal(before[shoot.Key].Take(1), shoot.Value));
    }

    // 40 % of the clusters: first upper ones of the shortest shoots.
    [Fact]
    public void A_share_takes_the_upper_clusters_of_the_shortest_shoots_first()
    {
        var work = Case(36, new ClusterThinning { On = Day, Share = 0.2 });
        work.Grown.Set();
        var before = Bearing(work);
        var vine = work.Canopy.Vines[0];
        var (count, berries) = (vine.Clusters().Count(), vine.Crop.Berries);
        var (missing, lost) = work.DoAndWeigh();
        var taken = (int)Math.Round(0.2 * count);
        Assert.Equal(taken, work.Worker.Done[0].Clusters);
        Assert.Equal(missing, lost, 1e-9 * lost);
        Assert.Equal(berries * (count - taken) / count, vine.Crop.Berries, 1e-6 * berries);
        var after = Bearing(work);
        var lostOne = work.Shoots.Where(shoot => after[shoot.Id].Length < before[shoot.Id].Length).ToList();
        Assert.All(lostOne, shoot => Assert.Equal(2, before[shoot.Id].Length));
        var kept = work.Shoots.Where(shoot => after[shoot.Id].Length == 2).ToList();
        Assert.True(lostOne.Max(shoot => shoot.Length) <= kept.Min(shoot => shoot.Length));
    }

    [Theory]
    [InlineData(1, "no shoot bore a cluster, so none was cut off")]
    [InlineData(36, "no shoot bore more than 4 clusters, so none was cut off")]
    public void Where_there_is_nothing_to_thin_it_says_so(int days, string reason)
    {
        var work = Case(days, new ClusterThinning { On = Day, ClustersPerShoot = 4 });
        Assert.False(work.Do().CanopyChanged);
        Assert.Equal([$"canopy_work.cluster_thinning.0 on 2025-06-01: {reason}."], work.Worker.Warnings);
    }

    [Fact]
    public void A_share_of_less_than_a_cluster_says_so()
    {
        var work = Case(36, new ClusterThinning { On = Day, Share = 0.01 });
        work.Do();
        Assert.Equal(
            ["canopy_work.cluster_thinning.0 on 2025-06-01: a share of 0.01 of a vine's clusters is less than one, so "
            + "none was cut off."],
            work.Worker.Warnings);
    }

    private static Dictionary<ShootId, int[]> Bearing(WorkCase work) => work.Shoots.ToDictionary(
        shoot => shoot.Id, shoot =>
            shoot.Phytomers.Where(node => node.Cluster is not null).Select(node => node.Rank).ToArray());

    private static WorkCase Case(int days, params ClusterThinning[] steps) =>
        new(new CanopyWork { ClusterThinning = steps }, GrownCanopy.Scenario(), days);
}
