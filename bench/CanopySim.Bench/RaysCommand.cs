using System.Diagnostics;
using System.Globalization;
using CanopySim.Geometry;
using CanopySim.RayTracing;
using CanopySim.Tests.RayTracing.Embree;

namespace CanopySim.Bench;

/// <summary><c>rays</c>: our own tracer and Embree by turns over the same rays in the full canopy of first-season (20 July).</summary>
internal static class RaysCommand
{
    private const string Usage = "rays [--rays N] [--turns N] [--embree-quality low|medium|high] [--embree-robust]";

    // Embree starts its rays so far from the triangle of origin [m], which ours excepts by its number.
    private const float Near = 1e-4f;

    public static int Run(string[] arguments)
    {
        var (rays, turns) = (1_000_000, 9);
        var (qualities, flags) = (new[] { "medium", "high" }, "-");
        for (var i = 0; i < arguments.Length; i++)
        {
            switch (arguments[i])
            {
                case "--rays" when i + 1 < arguments.Length && int.TryParse(arguments[i + 1], CultureInfo.InvariantCulture, out rays) && rays > 0:
                case "--turns" when i + 1 < arguments.Length && int.TryParse(arguments[i + 1], CultureInfo.InvariantCulture, out turns) && turns > 0:
                    i++;
                    break;
                case "--embree-quality" when i + 1 < arguments.Length:
                    qualities = [arguments[++i]];
                    break;
                case "--embree-robust":
                    flags = "r";
                    break;
                default:
                    Console.Error.WriteLine(Usage);
                    return 2;
            }
        }

        var build = Directory.CreateTempSubdirectory("canopysim-bench");
        try
        {
            var source = Path.Combine(FirstSeason.Repository, "tests", "embree", "embree_rays.cpp");
            if (EmbreeWitness.Build(source, build.FullName, out var problem) is not { } program)
            {
                Console.Error.WriteLine($"embree_rays was not built (Debian packages g++ and libembree-dev): {problem}");
                return 1;
            }

            var options = new SeasonOptions { Quality = Quality.Draft, Threads = 2 };
            var canopy = Simulation.CanopyOn(FirstSeason.Scenario, FirstSeason.Weather, FirstSeason.Offset, options, new DateOnly(2025, 7, 20));
            Console.WriteLine("| scene, triangles | build ms | rays | ours, M/s | Embree, M/s | ratio |\n|---|---|---|---|---|---|");
            foreach (var detail in new[] { SceneDetail.ForLight, SceneDetail.Drawn })
            {
                var scene = new CanopyScene(FirstSeason.Scenario).Place(canopy, detail).Scene;
                foreach (var quality in qualities) Compare(program, scene, detail, rays, turns, quality, flags);
            }

            return 0;
        }
        finally
        {
            build.Delete(recursive: true);
        }
    }

    private static void Compare(string program, Scene scene, SceneDetail detail, int count, int turns, string quality, string flags)
    {
        var rays = new CanopyRays(scene, count);
        GivenRay[][] sets = [rays.ToSun(), rays.Overhead(), rays.Hemisphere()];
        var builds = new double[turns];
        for (var turn = 0; turn < turns; turn++)
        {
            var started = Stopwatch.GetTimestamp();
            _ = new WideHierarchy(scene.Corners);
            builds[turn] = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
        }

        var hierarchy = new WideHierarchy(scene.Corners);
        using var embree = new EmbreeWitness(program, scene.Corners, sets, quality, flags);
        foreach (var (name, set, closest) in new[] { ("sun, any hit", 0, false), ("overhead, any hit", 1, false), ("hemisphere, any hit", 2, false), ("hemisphere, closest", 2, true) })
        {
            var (ours, theirs) = (new double[turns], new double[turns]);
            TracedSet own = default, other = default;
            for (var turn = -1; turn < turns; turn++)
            {
                own = Trace(hierarchy, sets[set], closest);
                other = closest ? embree.Closest(set, Near) : embree.Occluded(set, Near);
                if (turn >= 0) (ours[turn], theirs[turn]) = (own.Processor, other.Processor);
            }

            Array.Sort(ours);
            Array.Sort(theirs);
            var (ourRate, theirRate) = (count / ours[turns / 2] / 1e6, count / theirs[turns / 2] / 1e6);
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {detail}, {scene.TriangleCount} | {builds[turns / 2]:0.0}, Embree {quality} {1e3 * embree.BuildSeconds:0.0} | {name} | {ourRate:0.00} | {theirRate:0.00} | {ourRate / theirRate:0.00} | hits {own.Hits} {other.Hits}"));
        }
    }

    private static TracedSet Trace(WideHierarchy hierarchy, GivenRay[] rays, bool closest)
    {
        var hits = 0;
        var (wall, processor) = (Stopwatch.GetTimestamp(), Environment.CpuUsage.TotalTime);
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

        return new TracedSet((Environment.CpuUsage.TotalTime - processor).TotalSeconds, Stopwatch.GetElapsedTime(wall).TotalSeconds, hits);
    }
}
