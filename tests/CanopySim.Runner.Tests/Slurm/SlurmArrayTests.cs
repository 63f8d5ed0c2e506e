using System.Globalization;
using Xunit;

namespace CanopySim.Runner.Tests.Slurm;

/// <summary>
/// A plan as a job array of a real Slurm on this machine: what tasks lose when they are stopped, killed or cannot write, others make up
/// for, and the merged data are those of a run without Slurm, bit for bit.
/// </summary>
public sealed class SlurmArrayTests(SlurmArrayTests.WithoutSlurm without, ITestOutputHelper output) : IClassFixture<SlurmArrayTests.WithoutSlurm>
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    /// <summary>The plan, grown once without Slurm.</summary>
    public sealed class WithoutSlurm : IDisposable
    {
        private readonly Lazy<TemporaryFolder> _folder = new(() =>
        {
            var folder = new TemporaryFolder();
            SlurmPlan.RunHere(folder);
            return folder;
        });

        internal TemporaryFolder Folder => _folder.Value;

        public void Dispose()
        {
            if (_folder.IsValueCreated) Folder.Dispose();
        }
    }

    [Fact]
    public void An_array_with_its_merge_gives_what_a_run_here_gives()
    {
        Assert.SkipWhen(SlurmCluster.Missing is not null, SlurmCluster.Missing ?? "");
        using var folder = new TemporaryFolder();
        using var cluster = new SlurmCluster();
        var plan = SlurmPlan.Write(folder);
        var (array, merge) = SlurmPlan.Submit(cluster, folder, plan);
        cluster.WaitForEnd(merge, Longest);

        for (var task = 0; task < SlurmPlan.Tasks; task++)
            Assert.Contains("JobState=COMPLETED", Assert.Single(cluster.Completions(array, task)), StringComparison.Ordinal);
        Assert.Equal("COMPLETED", cluster.JobValue(merge, "JobState"));
        SlurmPlan.HeldTo(without.Folder, folder);
        Assert.Equal(0, cluster.Canopysim(folder.Path, "batch", "status", plan, "--out", "slurm-batch").ExitCode);
    }

    /// <summary>
    /// Task 0 is asked to stop when its first shard is there, task 1 is killed outright: the merge finds them incomplete and writes nothing.
    /// Task 0 goes on by requeue, task 1 by being submitted anew.
    /// </summary>
    [Fact]
    public void Tasks_that_were_stopped_or_killed_are_made_up_for()
    {
        Assert.SkipWhen(SlurmCluster.Missing is not null, SlurmCluster.Missing ?? "");
        using var folder = new TemporaryFolder();
        using var cluster = new SlurmCluster();
        var plan = SlurmPlan.Write(folder);
        var (array, merge) = SlurmPlan.Submit(cluster, folder, plan);

        Parallel.ForEach((string[])["TERM", "KILL"], (signal, _, task) =>
        {
            cluster.Wait($"a first shard of task {task}", Longest, () => SlurmPlan.IsComplete(folder, 1 + ((int)task * SlurmPlan.ShardsInTask)));
            cluster.Call("scancel", $"--signal={signal}", "--batch", $"{array}_{task}");
        });
        cluster.WaitForEnd(merge, Longest);
        var (stopped, killed) = (Assert.Single(cluster.Completions(array, 0)), Assert.Single(cluster.Completions(array, 1)));
        output.WriteLine($"{stopped}\n{killed}");
        Assert.Contains("JobState=FAILED", stopped, StringComparison.Ordinal);
        Assert.Contains(" ExitCode=130:0", stopped, StringComparison.Ordinal);
        Assert.Contains("JobState=FAILED", killed, StringComparison.Ordinal);
        Assert.Contains(" ExitCode=0:9", killed, StringComparison.Ordinal);

        // The stopped one kept what it had begun, the killed one what it had published.
        Assert.False(SlurmPlan.IsComplete(folder, SlurmPlan.ShardsInTask));
        Assert.False(SlurmPlan.IsComplete(folder, 2 * SlurmPlan.ShardsInTask));
        Assert.Equal(("FAILED", "3:0"), (cluster.JobValue(merge, "JobState"), cluster.JobValue(merge, "ExitCode")));
        Assert.False(Directory.Exists(folder.File("slurm-batch/merged")));
        Assert.Equal(RunnerApp.SomeFailed, cluster.Canopysim(folder.Path, "batch", "status", plan, "--out", "slurm-batch").ExitCode);
        var before = SlurmPlan.Written(folder);

        cluster.Call("scontrol", "requeue", $"{array}_0");
        cluster.Wait("task 0 complete", Longest, () => cluster.JobValue($"{array}_0", "JobState") == "COMPLETED");
        var (_, secondMerge) = SlurmPlan.Submit(cluster, folder, plan);
        cluster.WaitForEnd(secondMerge, Longest);
        Assert.Equal("COMPLETED", cluster.JobValue(secondMerge, "JobState"));
        SlurmPlan.HeldTo(without.Folder, folder);

        // What was finished before is not grown again.
        var after = SlurmPlan.Written(folder);
        Assert.All(before, shard => Assert.Equal(shard.Value, after[shard.Key]));
    }

    /// <summary>A folder that cannot be written makes the program leave with 75, which the cluster requeues by itself.</summary>
    [Fact]
    public void A_task_that_cannot_write_is_requeued_by_itself()
    {
        Assert.SkipWhen(SlurmCluster.Missing is not null, SlurmCluster.Missing ?? "");
        using var folder = new TemporaryFolder();
        using var cluster = new SlurmCluster();
        var plan = SlurmPlan.Write(folder);
        var (array, merge) = SlurmPlan.Submit(cluster, folder, plan, "--hold");

        // A file where the shards' folder was: a full disk or lost mount of which root, too, is told.
        Directory.Move(folder.File("slurm-batch/shards"), folder.File("aside"));
        File.WriteAllText(folder.File("slurm-batch/shards"), "");
        cluster.Call("scontrol", "release", array, merge);
        cluster.Wait("every task requeued", Longest, () => Enumerable.Range(0, SlurmPlan.Tasks)
            .All(task => int.TryParse(cluster.JobValue($"{array}_{task.ToString(CultureInfo.InvariantCulture)}", "Restarts"), out var restarts) && restarts > 0));
        File.Delete(folder.File("slurm-batch/shards"));
        Directory.Move(folder.File("aside"), folder.File("slurm-batch/shards"));
        cluster.WaitForEnd(merge, Longest);
        Assert.Equal("COMPLETED", cluster.JobValue(merge, "JobState"));
        SlurmPlan.HeldTo(without.Folder, folder);
    }

    [Fact]
    public void Nothing_is_left_of_a_cluster()
    {
        Assert.SkipWhen(SlurmCluster.Missing is not null, SlurmCluster.Missing ?? "");
        IReadOnlyList<int> daemons;
        using (var cluster = new SlurmCluster())
        {
            daemons = cluster.Daemons;
            Assert.Equal(SlurmCluster.Nodes + 2, daemons.Count);
        }

        Assert.All(daemons, daemon => Assert.False(File.Exists($"/proc/{daemon}/stat") && !File.ReadAllText($"/proc/{daemon}/stat").Contains(") Z ", StringComparison.Ordinal)));
    }
}
