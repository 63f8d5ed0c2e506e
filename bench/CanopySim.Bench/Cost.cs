using System.Diagnostics;

namespace CanopySim.Bench;

/// <summary>What a piece of work took.</summary>
/// <param name="Processor">Time of the processor in all threads, the collector's too [ms]: other programs hardly lengthen it.</param>
/// <param name="Wall">Time gone by [ms].</param>
/// <param name="Allocated">Memory allocated on the managed heap [MB], whether held or not.</param>
internal readonly record struct Cost(double Processor, double Wall, double Allocated)
{
    public static Cost Of(Action work)
    {
        var allocated = GC.GetTotalAllocatedBytes(precise: true);
        var processor = Environment.CpuUsage.TotalTime;
        var started = Stopwatch.GetTimestamp();
        work();
        var wall = Stopwatch.GetElapsedTime(started);
        processor = Environment.CpuUsage.TotalTime - processor;
        return new Cost(processor.TotalMilliseconds, wall.TotalMilliseconds, (GC.GetTotalAllocatedBytes(precise: true) - allocated) / 1e6);
    }

    /// <summary>The median of each figure by itself.</summary>
    public static Cost Median(IReadOnlyList<Cost> costs) =>
        new(Middle(costs.Select(cost => cost.Processor)), Middle(costs.Select(cost => cost.Wall)), Middle(costs.Select(cost => cost.Allocated)));

    public static double Middle(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
