using CanopySim.Files.Batch;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>What the scripts for Slurm say.</summary>
public sealed class SlurmScriptTest
{
    private static readonly SlurmJob Job = new()
    {
        Name = "vines",
        Program = ["/opt/canopysim/canopysim"],
        Plan = "/data/my plans/plan.yaml",
        Folder = "/data/results/vines",
        Tasks = 12,
        Array = "0-11",
        Options = ["--account=grapes", "-p", "long", "--time=1:00:00"],
    };

    [Fact]
    public void AnArrayTaskBecomesTheProgram()
    {
        var lines = SlurmScript.Array(Job).TrimEnd().Split('\n');
        Assert.Equal("#!/bin/bash", lines[0]);
        Assert.Equal(
            "exec /opt/canopysim/canopysim batch run '/data/my plans/plan.yaml' --out /data/results/vines --task \"$SLURM_ARRAY_TASK_ID\" --tasks 12",
            lines[^1]);
        foreach (var line in new[] { "--array=0-11", "--requeue", "--signal=B:TERM@120", "--account=grapes", "-p long", "--time=1:00:00" })
            Assert.Contains($"#SBATCH {line}", lines);
        // Options count only before the first command.
        Assert.All(lines.Skip(1).SkipLast(1), line => Assert.StartsWith("#", line));
    }

    [Fact]
    public void TheMergeHasTheSameOptionsAndNoArray()
    {
        var script = SlurmScript.Merge(Job);
        Assert.Contains("#SBATCH --account=grapes\n", script, StringComparison.Ordinal);
        Assert.DoesNotContain("--array", script, StringComparison.Ordinal);
        Assert.EndsWith("exec /opt/canopysim/canopysim batch merge '/data/my plans/plan.yaml' --out /data/results/vines\n", script);
    }

    [Theory]
    [InlineData(new int[0], "")]
    [InlineData(new[] { 4 }, "4")]
    [InlineData(new[] { 0, 1, 2, 3, 7, 9, 10 }, "0-3,7,9-10")]
    public void ArraysNameRanges(int[] tasks, string expected) => Assert.Equal(expected, SlurmScript.Ranges(tasks));

    [Theory]
    // Shards of 10 minutes: tasks of 20 take two each.
    [InlineData(100, 10, 20, 1001, 50)]
    // Shards longer than a task: one each.
    [InlineData(100, 40, 15, 1001, 100)]
    // A small cluster takes no more than its largest array, whatever that makes of a task.
    [InlineData(5000, 10, 10, 1001, 1001)]
    [InlineData(1, 0.1, 15, 1001, 1)]
    public void TasksAreOfTheAskedLengthWithinTheLargestArray(int shards, double shardMinutes, double minutes, int largest, int expected) =>
        Assert.Equal(expected, SlurmScript.Tasks(shards, shardMinutes, minutes, largest));

    [Theory]
    [InlineData("--cpus-per-task=8", 8)]
    [InlineData("-c 4", 4)]
    [InlineData("-c16", 16)]
    [InlineData("--account=x", 1)]
    [InlineData("--cpus-per-task", 1)]
    public void CoresAreThoseOfTheOptions(string options, int cores) => Assert.Equal(cores, SlurmScript.CoresIn(options.Split(' ')));
}
