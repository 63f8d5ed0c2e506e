using System.Globalization;
using CanopySim.Geometry;
using CanopySim.RayTracing;
using CanopySim.Tests.RayTracing.Embree;

namespace CanopySim.Bench;

/// <summary>
/// <c>rays</c>: our tracer and Embree by turns over the same rays in the same order, in the full canopy of first-season (20 July).
/// One thread each; processor time, since other work on the machine leaves it alone.
/// </summary>
internal static class RaysCommand
{
    private const string Usage = "rays [--rays N] [--turns N]";

    // Embree starts its rays so far from the triangle of origin [m], which ours excepts by its number: a filter would cost it time.
    private const float Near = 1e-4f;

    private static readonly string[] Qualities = ["medium", "high"];

    private static readonly (string Name, int Set, bool Closest)[] Questions =
        [("sun, any hit", 0, false), ("overhead, any hit", 1, false), ("hemisphere, any hit", 2, false), ("hemisphere, closest", 2, true)];

    public static int Run(string[] arguments)
    {
        var options = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i + 1 < arguments.Length; i += 2) options[arguments[i]] = arguments[i + 1];
        if (arguments.Length % 2 != 0 || options.Keys.Except(["--rays", "--turns"]).Any()
                || !int.TryParse(options.GetValueOrDefault("--rays", "1000000"), CultureInfo.InvariantCulture, out var count) || count < 1
                || !int.TryParse(options.GetValueOrDefault("--turns", "9"), CultureInfo.InvariantCulture, out var turns) || turns < 1)
        {
            Console.Error.WriteLine(Usage);
            return 2;
        }

        var folder = Directory.CreateTempSubdirectory("canopysim-bench");
        try
        {
            var source = Path.Combine(FirstSeason.Repository, "tests", "embree", "embree_rays.cpp");
            if (EmbreeWitness.Build(source, folder.FullName, out var problem) is not { } program)
            {
                Console.Error.WriteLine($"embree_rays was not built (it needs the Debian packages g++ and libembree-dev): {problem}");
                return 1;
            }

            var season = new SeasonOptions { Quality = Quality.Draft, Threads = 2 };
            var canopy = Simulation.CanopyOn(FirstSeason.Scenario, FirstSeason.Weather, FirstSeason.Offset, season, new DateOnly(2025, 7, 20));
            foreach (var detail in new[] { SceneDetail.ForLight, SceneDetail.Drawn })
            {
                var scene = new CanopyScene(FirstSeason.Scenario).Place(canopy, detail).Scene;
                var rays = new CanopyRays(scene, count);
                GivenRay[][] sets = [rays.ToSun(), rays.Overhead(), rays.Hemisphere()];
                Console.WriteLine($"{detail}: {scene.TriangleCount} triangles, {count} rays of each kind, medians of {turns} turns by processor time\n");
                BesideEmbree(program, scene, sets, turns);
                ThroughEndlessRows(scene, sets, turns);
            }

            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void BesideEmbree(string program, Scene scene, GivenRay[][] sets, int turns)
    {
        var builds = new double[turns];

        // Processor time counts the compiler's too until it is done.
        for (var turn = -30; turn < turns; turn++)
        {
            var seconds = Processor(() => new WideHierarchy(scene.Corners));
            if (turn >= 0) builds[turn] = seconds;
        }

        var hierarchy = new WideHierarchy(scene.Corners);
        var witnesses = Qualities.Select(quality => new EmbreeWitness(program, scene.Corners, sets, quality, "-")).ToArray();
        Say($"build, ms: ours {1e3 * Median(builds):0}, {string.Join(", ", Qualities.Zip(witnesses, (quality, witness) => Text($"Embree {quality} {1e3 * witness.BuildSeconds:0} (by the clock)")))}\n");
        Say($"| rays | that hit | ours, M/s | {string.Join(" | ", Qualities.Select(quality => $"Embree {quality}, M/s"))} | ours / faster Embree |");
        Say($"|---|---|---|{string.Concat(Qualities.Select(_ => "---|"))}---|");
        foreach (var (name, set, closest) in Questions)
        {
            var ours = new double[turns];
            var theirs = Qualities.Select(_ => new double[turns]).ToArray();
            var hits = 0;

            // The first turn warms up.
            for (var turn = -1; turn < turns; turn++)
            {
                var own = Processor(() => hits = Trace(hierarchy, sets[set], closest));
                if (turn >= 0) ours[turn] = own;
                for (var witness = 0; witness < witnesses.Length; witness++)
                {
                    var other = closest ? witnesses[witness].Closest(set, Near) : witnesses[witness].Occluded(set, Near);
                    if (turn >= 0) theirs[witness][turn] = other.Processor;
                }
            }

            var count = sets[set].Length;
            var rates = theirs.Select(seconds => count / Median(seconds) / 1e6).ToArray();
            var rate = count / Median(ours) / 1e6;

            // Turn by turn, since the processor's clock changes between turns more than within one.
            var ratio = theirs.Min(seconds => Median([.. seconds.Zip(ours, (other, own) => other / own)]));
            Say($"| {name} | {100.0 * hits / count:0} % | {rate:0.00} | {string.Join(" | ", rates.Select(other => Text($"{other:0.00}")))} | {ratio:0.00} |");
        }

        Console.WriteLine();
        foreach (var witness in witnesses) witness.Dispose();
    }

    // Single precision and wide beside plain and double, with re-entry into the cell; a hundredth of the rays for the slow one.
    private static void ThroughEndlessRows(Scene scene, GivenRay[][] sets, int turns)
    {
        var (wide, plain) = (new WidePeriodicTracer(scene), new PeriodicRayTracer(scene));
        Say($"| rays through endless rows | wide, M/s | plain in double, M/s |");
        Say($"|---|---|---|");
        foreach (var (name, set, closest) in Questions)
        {
            var rays = sets[set].Select(given => (Ray: new Ray(Point3.From(given.Origin), Point3.From(given.Direction)), given.Except)).ToArray();
            var (fast, slow) = (new double[turns], new double[turns]);
            for (var turn = -1; turn < turns; turn++)
            {
                var own = Processor(() =>
                {
                    foreach (var (ray, except) in rays) _ = closest ? wide.Closest(ray, except) is not null : wide.IsBlocked(ray, except);
                });
                var other = Processor(() =>
                {
                    for (var at = 0; at < rays.Length; at += 100)
                        _ = closest ? plain.Closest(rays[at].Ray, rays[at].Except) is not null : plain.IsBlocked(rays[at].Ray, rays[at].Except);
                });
                if (turn >= 0) (fast[turn], slow[turn]) = (own, other);
            }

            Say($"| {name} | {rays.Length / Median(fast) / 1e6:0.00} | {(rays.Length + 99) / 100 / Median(slow) / 1e6:0.000} |");
        }

        Console.WriteLine();
    }

    private static int Trace(WideHierarchy hierarchy, GivenRay[] rays, bool closest)
    {
        var hits = 0;
        if (closest)
        {
            foreach (ref readonly var ray in rays.AsSpan())
                if (hierarchy.Closest(ray.Origin, ray.Direction, ray.Limit, ray.Except) is not null) hits++;
        }
        else
        {
            foreach (ref readonly var ray in rays.AsSpan())
                if (hierarchy.IsBlocked(ray.Origin, ray.Direction, ray.Limit, ray.Except)) hits++;
        }

        return hits;
    }

    private static double Processor(Action work)
    {
        var before = Environment.CpuUsage.TotalTime;
        work();
        return (Environment.CpuUsage.TotalTime - before).TotalSeconds;
    }

    private static double Median(double[] values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);

    private static void Say(FormattableString text) => Console.WriteLine(Text(text));
}
