using System.Globalization;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Tests.Light;
using static CanopySim.Bench.Tables;

namespace CanopySim.Bench;

/// <summary><c>quality</c>: what the levels promise and cost, as tables for the README beside this.</summary>
internal static class QualityCommand
{
    private const string Usage = "quality [--directions N] [--runs N] [--dates YYYY-MM-DD,…] [--levels draft,standard,fine] [--tables errors,costs,seasons]";

    private static readonly string[] Days = ["clear", "overcast", "mixed"];

    public static int Run(string[] arguments)
    {
        if (Options.Read(arguments, Usage, ("--directions", "1200"), ("--runs", "7"), ("--dates", "2025-05-20,2025-07-20"),
                ("--levels", "draft,standard,fine"), ("--tables", "errors,costs,seasons")) is not { } options) return 2;
        var blocks = new Lazy<GrownBlock[]>(() => options.List("--dates", text => new GrownBlock(DateOnly.Parse(text, CultureInfo.InvariantCulture))));
        var levels = options.List("--levels", text => Enum.Parse<Quality>(text, ignoreCase: true));
        var tables = options.List("--tables", text => text);
        if (tables.Contains("errors")) PrintErrors(blocks.Value, levels, options.Number("--directions"));
        if (tables.Contains("costs")) PrintCosts(blocks.Value, levels, options.Number("--runs"));
        if (tables.Contains("seasons")) PrintSeasons(levels);
        return 0;
    }

    private static void PrintErrors(GrownBlock[] blocks, Quality[] levels, int directions)
    {
        var converged = new LightQuality { SkyDirectionCount = directions, SkyPixel = 0.006, SunPixel = 0.002, SolverTolerance = 1e-6 };
        // Half the directions in pixels of twice the area: about how far from converged the converged solution itself is.
        var before = converged with { SkyDirectionCount = directions / 2, SkyPixel = 0.0085, SunPixel = 0.0028 };
        Console.WriteLine($"PAR that each leaf absorbs in a day against {directions} directions in pixels of 6 mm, suns of 2 mm, on the canopy as drawn: canopy bias; root mean square");
        Console.WriteLine($"over leaves, relative to the mean leaf. The widest gap of a budget in any hour of the three days, PAR or NIR. {Machine.Line}");
        PrintHeader(["canopy", "leaves", "level", "triangles", "directions", "pixels of sky, sun", .. Days.Select(day => $"{day}: bias; leaves"), "closure", "target: bias; leaves; closure", "kept?"]);
        foreach (var block in blocks)
        {
            var drawn = block.Drawn();
            var exact = Absorbed(block, drawn, converged).LeafPar;
            foreach (var level in levels)
                PrintError(block, $"{level}".ToLowerInvariant(), block.For(level), LightQuality.For(level), exact, LevelTarget.For(level));
            PrintError(block, "half as many as converged", drawn, before, exact, null);
        }

        Console.WriteLine();
    }

    private static void PrintError(GrownBlock block, string name, Scene scene, LightQuality quality, double[][] exact, LevelTarget? target)
    {
        var (found, closure) = Absorbed(block, scene, quality);
        var (cells, kept) = (new List<string>(), closure <= target?.Closure);
        for (var day = 0; day < VineyardDays.Days; day++)
        {
            var (bias, error) = Compare(found[day], exact[day]);
            kept &= Math.Abs(bias) <= target?.Bias && error <= target?.LeafError;
            cells.Add(Text($"{100 * bias:0.000} %; {100 * error:0.00} %"));
        }

        Row([DayText(block.Date), $"{GrownBlock.LeavesIn(scene)}", name, $"{scene.TriangleCount}", $"{quality.SkyDirectionCount}", Pixels(quality),
            .. cells, Text($"{closure:0.0e-0}"),
            target is null ? "" : Text($"{100 * target.Bias} %; {100 * target.LeafError} %; {target.Closure:0e-0}"), Verdict(target, kept)]);
    }

    private static void PrintCosts(GrownBlock[] blocks, Quality[] levels, int runs)
    {
        Console.WriteLine($"A day with new geometry, medians of {runs} runs [ms]: who sees whom (build); the suns, sky and scattering of a mixed day of {NewDay.HourCount} hours in both bands (solve).");
        Console.WriteLine($"One thread: processor time, the collector's included. Two threads: time gone by. {Machine.Line}");
        PrintHeader("canopy", "leaves", "level", "triangles", "directions", "pixels of sky, sun", "build, 1 thread", "solve, 1 thread", "build, 2 threads", "solve, 2 threads", "allocated, 1 thread [MB]");
        foreach (var block in blocks)
        {
            foreach (var level in levels)
            {
                var (scene, quality) = (block.For(level), LightQuality.For(level));
                var (one, two) = (LightCost.Of(scene, quality, 1, runs), LightCost.Of(scene, quality, 2, runs));
                Row(DayText(block.Date), $"{GrownBlock.LeavesIn(scene)}", $"{level}".ToLowerInvariant(), $"{scene.TriangleCount}", $"{quality.SkyDirectionCount}", Pixels(quality),
                    Text($"{one.Build.Processor:0}"), Text($"{one.Solve.Processor:0}"), Text($"{two.Build.Wall:0}"), Text($"{two.Solve.Wall:0}"),
                    Text($"{one.Build.Allocated + one.Solve.Allocated:0}"));
            }
        }

        Console.WriteLine();
    }

    private static void PrintSeasons(Quality[] levels)
    {
        Console.WriteLine($"The season of `first-season` without files and charts, each in a process of its own, one thread. Carbon: net assimilation [kg CO₂ a vine]. {Machine.Line}");
        PrintHeader("level", "directions", "leaves, triangles at most", "carbon", "less fine's", "ripe", "less fine's", "target: carbon; days", "kept?", "seconds", "of them light", "processor seconds", "closure", "peak [MB]");
        var seasons = levels.ToDictionary(level => level, level => SeasonCommand.InOwnProcess(level, 1, 1));
        var fine = seasons.GetValueOrDefault(Quality.Fine);
        foreach (var (level, season) in seasons)
        {
            var target = LevelTarget.For(level);
            var carbon = fine is null ? (double?)null : (season.Carbon / fine.Carbon) - 1;
            var days = season.Ripe?.DayNumber - fine?.Ripe?.DayNumber;
            var kept = carbon is { } share && target is not null && Math.Abs(share) <= target.Carbon && days is { } late && Math.Abs(late) <= target.Days;
            Row($"{level}".ToLowerInvariant(), $"{LightQuality.For(level).SkyDirectionCount}", $"{season.Leaves}, {season.Triangles}",
                Text($"{season.Carbon:0.000}"), Text($"{100 * carbon:0.00} %"), season.Ripe is { } ripe ? DayText(ripe) : "not", Text($"{days} d"),
                target is null ? "" : Text($"{100 * target.Carbon} %; {target.Days} d"), fine is null ? "" : Verdict(target, kept),
                Text($"{season.Seconds:0.0}"), Text($"{season.LightSeconds:0.0}"), Text($"{season.ProcessorSeconds:0.0}"), Text($"{season.Closure:0.0e-0}"), Text($"{season.PeakMegabytes:0}"));
        }
    }

    private static (double[][] LeafPar, double Closure) Absorbed(GrownBlock block, Scene scene, LightQuality quality) =>
        new VineyardDays(GrownBlock.Scenario, FirstSeason.Offset).Absorbed(scene, quality, block.LeafNumbers);

    // As the tests of the levels' targets compare them: leaves that have fallen have no light in either.
    private static (double Bias, double Error) Compare(double[] found, double[] exact)
    {
        var leaves = exact.Count(par => par > 0);
        var squares = found.Zip(exact, (value, other) => (value - other) * (value - other)).Sum();
        return ((found.Sum() / exact.Sum()) - 1, Math.Sqrt(squares / leaves) / (exact.Sum() / leaves));
    }

    private static string Verdict(LevelTarget? target, bool kept) => target is null ? "" : kept ? "kept" : "missed";

    private static string DayText(DateOnly date) => date.ToString("d MMMM", CultureInfo.InvariantCulture);
}
