namespace CanopySim.Files.Batch;

/// <summary>Which shards a task of several grows: neighbors, as they share weather, and as many as the others or one more.</summary>
public static class TaskShards
{
    /// <param name="task">Number of the task, from 0.</param>
    /// <param name="tasks">How many tasks there are.</param>
    /// <param name="shards">How many shards there are; they count from 1.</param>
    public static IReadOnlyList<int> Of(int task, int tasks, int shards)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(task);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(task, tasks);
        var first = (int)((long)shards * task / tasks) + 1;
        var last = (int)((long)shards * (task + 1) / tasks);
        return [.. Enumerable.Range(first, last - first + 1)];
    }
}
