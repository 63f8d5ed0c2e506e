using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Tests.Light;

namespace CanopySim.Bench;

/// <summary>
/// What a day with new geometry costs: who sees whom (build), and the sun, sky and scattering of a mixed day of midsummer in both bands (solve). Every
/// run builds anew, for a geometry may keep suns for later days; the workers' arrays are kept, as a season keeps them.
/// </summary>
/// <param name="Build">Median of the runs.</param>
/// <param name="Solve">Median of the runs.</param>
/// <param name="Geometry">The last one built.</param>
/// <param name="Held">Memory that the geometry holds [MB].</param>
/// <param name="Peak">Most memory of the process in the runs [MB].</param>
internal sealed record LightCost(Cost Build, Cost Solve, LightGeometry Geometry, double Held, double Peak)
{
    private const int MixedDay = 2;

    public static LightCost Of(Scenario scenario, Scene scene, LightQuality quality, int threads, int runs)
    {
        var sky = new SkyFrame(scenario.Rows.Azimuth, quality.SkyDirectionCount);
        var hours = new VineyardDays(scenario, FirstSeason.Offset).Light(sky)[MixedDay];
        var workers = new LinkWorkers();
        LightGeometry? geometry = null;
        Machine.ForgetPeak();
        var (build, solve) = (new List<Cost>(), new List<Cost>());
        for (var run = 0; run <= runs; run++)
        {
            build.Add(Cost.Of(() => geometry = LightGeometry.Build(scene, sky.Directions, quality, threads, workers)));
            solve.Add(Cost.Of(() => geometry!.Solve(hours, scenario.Optics, threads)));
        }

        // The first run compiles and makes the workers' arrays.
        build.RemoveAt(0);
        solve.RemoveAt(0);
        var peak = Machine.PeakMegabytes;
        var workersOnly = HeldBy(() => geometry = null);
        geometry = LightGeometry.Build(scene, sky.Directions, quality, threads, workers);
        var held = HeldBy(() => { }) - workersOnly;
        GC.KeepAlive(workers);
        return new LightCost(Cost.Median(build), Cost.Median(solve), geometry, held, peak);
    }

    private static double HeldBy(Action before)
    {
        before();
        return GC.GetTotalMemory(forceFullCollection: true) / 1e6;
    }
}
