using CanopySim.Geometry;
using CanopySim.Light;

namespace CanopySim.Bench;

/// <summary>What <see cref="NewDay"/> costs a scene.</summary>
/// <param name="Build">Who sees whom, median of the runs.</param>
/// <param name="Solve">Suns, sky and scattering, median of the runs.</param>
/// <param name="Geometry">The last one built.</param>
/// <param name="Held">Memory that the geometry holds [MB].</param>
/// <param name="Peak">Most memory of the process in the runs [MB].</param>
internal sealed record LightCost(Cost Build, Cost Solve, LightGeometry Geometry, double Held, double Peak)
{
    public static LightCost Of(Scene scene, LightQuality quality, int threads, int runs)
    {
        var day = new NewDay(scene, quality, threads);
        Machine.ForgetPeak();
        day.Run();
        var costs = Enumerable.Range(0, runs).Select(_ => day.Run()).ToArray();
        var peak = Machine.PeakMegabytes;
        day.Forget();
        var before = GC.GetTotalMemory(forceFullCollection: true);
        day.Build();
        var held = (GC.GetTotalMemory(forceFullCollection: true) - before) / 1e6;
        return new LightCost(Cost.Median([.. costs.Select(cost => cost.Build)]), Cost.Median([.. costs.Select(cost => cost.Solve)]), day.Geometry!, held, peak);
    }

    /// <summary>
    /// How many times the processor time of a scene another takes on one thread: build, solve and both, medians over runs. A run of the larger stands
    /// between as many of the smaller as last about as long, lest what else the machine does falls on one of them alone.
    /// </summary>
    public static (double Build, double Solve, double Both) Ratio(Scene small, Scene large, LightQuality quality, int times, int runs)
    {
        var (days, tenfold) = (new NewDay(small, quality, 1), new NewDay(large, quality, 1));
        days.Run();
        tenfold.Run();
        var ratios = Enumerable.Range(0, runs).Select(_ =>
        {
            var before = Mean(times / 2);
            var one = tenfold.Run();
            var after = Mean(times - (times / 2));
            var (build, solve) = ((before.Build + after.Build) / 2, (before.Solve + after.Solve) / 2);
            return (Build: one.Build.Processor / build, Solve: one.Solve.Processor / solve, Both: (one.Build.Processor + one.Solve.Processor) / (build + solve));
        }).ToArray();
        return (Cost.Middle(ratios.Select(ratio => ratio.Build)), Cost.Middle(ratios.Select(ratio => ratio.Solve)), Cost.Middle(ratios.Select(ratio => ratio.Both)));

        (double Build, double Solve) Mean(int count)
        {
            var costs = Enumerable.Range(0, count).Select(_ => days.Run()).ToArray();
            return (costs.Average(cost => cost.Build.Processor), costs.Average(cost => cost.Solve.Processor));
        }
    }
}
