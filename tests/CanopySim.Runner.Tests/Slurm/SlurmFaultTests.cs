#if FAULTS
using Xunit;

namespace CanopySim.Runner.Tests.Slurm;

/// <summary>
/// What a cluster itself may lose while an array runs, a node or its controller, for bench/faults.sh: too long for every day.
/// </summary>
public sealed class SlurmFaultTests(ITestOutputHelper output)
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);

    [Fact]
    public void A_killed_node_is_made_up_for()
    {
        using var here = new TemporaryFolder();
        SlurmPlan.RunHere(here);
        using var folder = new TemporaryFolder();
        using var cluster = new SlurmCluster();
        var plan = SlurmPlan.Write(folder);
        var (array, merge) = SlurmPlan.Submit(cluster, folder, plan);
        cluster.Wait("a first shard", Longest, () => SlurmPlan.IsComplete(folder, 1));
        var node = int.Parse(cluster.JobValue($"{array}_0", "NodeList")![1..]);
        cluster.KillNode(node);
        cluster.Wait("the node given up", Longest, () => cluster.Call("sinfo", "--noheader", "--Node", "--format", "%N %t")
            .Split('\n').Any(line => line.StartsWith($"n{node} down", StringComparison.Ordinal)));
        output.WriteLine($"node {node} down; task 0: {cluster.JobValue($"{array}_0", "JobState")}");
        cluster.StartNode(node);
        cluster.WaitForEnd(merge, Longest);
        output.WriteLine(string.Join('\n', cluster.Completions(array, 0)));
        if (cluster.JobValue(merge, "JobState") != "COMPLETED")
        {
            var (_, second) = SlurmPlan.Submit(cluster, folder, plan);
            cluster.WaitForEnd(second, Longest);
            Assert.Equal("COMPLETED", cluster.JobValue(second, "JobState"));
        }

        SlurmPlan.HeldTo(here, folder);
    }

    [Fact]
    public void A_controller_that_starts_again_finds_its_array()
    {
        using var here = new TemporaryFolder();
        SlurmPlan.RunHere(here);
        using var folder = new TemporaryFolder();
        using var cluster = new SlurmCluster();
        var plan = SlurmPlan.Write(folder);
        var (array, merge) = SlurmPlan.Submit(cluster, folder, plan);
        cluster.Wait("a first shard", Longest, () => SlurmPlan.IsComplete(folder, 1));
        cluster.StopController();
        Thread.Sleep(TimeSpan.FromSeconds(3));
        cluster.StartController();
        cluster.Wait("the controller there", Longest, () => cluster.JobValue(merge, "JobState") is not null);
        output.WriteLine($"task 0 after the restart: {cluster.JobValue($"{array}_0", "JobState")}");
        cluster.WaitForEnd(merge, Longest);
        Assert.Equal("COMPLETED", cluster.JobValue(merge, "JobState"));
        SlurmPlan.HeldTo(here, folder);
    }
}
#endif
