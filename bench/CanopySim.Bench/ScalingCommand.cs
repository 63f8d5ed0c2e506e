using CanopySim.Geometry;
using CanopySim.Light;
using static CanopySim.Bench.Tables;

namespace CanopySim.Bench;

/// <summary><c>scaling</c>: time and memory of light against leaves, directions and threads, as tables for the README beside this.</summary>
internal static class ScalingCommand
{
    private const string Usage = "scaling [--runs N] [--times 1,2,4,10] [--levels draft,standard] [--directions 54,100,200,400] [--tables size,directions,vines]";

    // Time for ten times the leaves: no worse than the leaves by a fifth.
    private const int Tenfold = 10;
    private const double TenfoldTarget = 12;

    private static readonly DateOnly Young = new(2025, 4, 30);
    private static readonly DateOnly Full = new(2025, 7, 20);

    private static readonly string[] Header =
    [
        "canopy", "leaves", "triangles", "level", "directions", "pixels of sky, sun", "build", "solve", "wall, 1 thread: build; solve", "wall, 2 threads: build; solve",
        "links [10⁶]", "gap of the sky", "allocated [MB]: build; solve", "held [MB]", "peak [MB], 1 and 2 threads",
    ];

    public static int Run(string[] arguments)
    {
        if (Options.Read(arguments, Usage, ("--runs", "5"), ("--times", "1,2,4,10"), ("--levels", "draft,standard"), ("--directions", "54,100,200,400"),
                ("--tables", "size,directions,vines")) is not { } options) return 2;
        var (runs, tables) = (options.Number("--runs"), options.List("--tables", text => text));
        if (tables.Contains("size")) PrintSizes(runs, options.List("--levels", text => Enum.Parse<Quality>(text, ignoreCase: true)), options.Numbers("--times"));
        if (tables.Contains("directions")) PrintDirections(runs, options.Numbers("--directions"));
        if (tables.Contains("vines")) PrintSeasons();
        return 0;
    }

    private static void PrintSizes(int runs, Quality[] levels, int[] repeats)
    {
        var (young, full) = (new GrownBlock(Young), new GrownBlock(Full));
        Console.WriteLine($"A day with new geometry on the canopy of `first-season`, repeated along the row, medians of {runs} runs: who sees whom (build) and a mixed day of midsummer (solve) [ms].");
        Console.WriteLine($"`build` and `solve` are processor time of one thread. Held: by the geometry. {Machine.Line}");
        PrintHeader(Header);
        var ratios = new List<string>();
        foreach (var level in levels)
        {
            var (quality, name) = (LightQuality.For(level), $"{level}".ToLowerInvariant());
            Print("30 April", young.For(level), name, quality, runs);
            var scene = full.For(level);
            foreach (var times in repeats) Print($"20 July × {times}", full.Repeat(scene, times), name, quality, runs);
            ratios.Add(RatioLine(level, LightCost.Ratio(scene, full.Repeat(scene, Tenfold), quality, Tenfold, runs), runs));
        }

        Console.WriteLine();
        foreach (var ratio in ratios) Console.WriteLine(ratio);
        Console.WriteLine();
    }

    private static void PrintDirections(int runs, int[] directions)
    {
        var scene = new GrownBlock(Full).For(Quality.Standard);
        Console.WriteLine($"The same canopy by directions, standard in all else, medians of {runs} runs. {Machine.Line}");
        PrintHeader(Header);
        foreach (var count in directions) Print("20 July × 1", scene, "standard", LightQuality.Standard with { SkyDirectionCount = count }, runs);
        Console.WriteLine();
    }

    private static void Print(string canopy, Scene scene, string level, LightQuality quality, int runs)
    {
        var one = LightCost.Of(scene, quality, 1, runs);
        var two = LightCost.Of(scene, quality, 2, runs);
        Row(canopy, $"{GrownBlock.LeavesIn(scene)}", $"{scene.TriangleCount}", level, $"{quality.SkyDirectionCount}", Pixels(quality),
            Text($"{one.Build.Processor:0.0}"), Text($"{one.Solve.Processor:0.0}"), Text($"{one.Build.Wall:0.0}; {one.Solve.Wall:0.0}"), Text($"{two.Build.Wall:0.0}; {two.Solve.Wall:0.0}"),
            Text($"{one.Geometry.LinkCount / 1e6:0.00}"), Text($"{one.Geometry.SkyGapFraction:0.0000}"), Text($"{one.Build.Allocated:0.0}; {one.Solve.Allocated:0.0}"),
            Text($"{one.Held:0.0}"), Text($"{one.Peak:0}, {two.Peak:0}"));
    }

    private static string RatioLine(Quality level, (double Build, double Solve, double Both) ratio, int runs) => Text(
        $"- {$"{level}".ToLowerInvariant()}, {LightQuality.For(level).SkyDirectionCount} directions, 1 thread: ten times the leaves of 20 July take {ratio.Both:0.0} times the processor time (build {ratio.Build:0.0}, solve {ratio.Solve:0.0}), median of {runs} runs among as many of the one; target at most {TenfoldTarget}: {(ratio.Both <= TenfoldTarget ? "kept" : "missed")}.");

    private static void PrintSeasons()
    {
        Console.WriteLine($"A draft season with more vines in the cell (`rows.vines_in_cell`), without files and charts, each in a process of its own, one thread. {Machine.Line}");
        PrintHeader("vines", "leaves, triangles at most", "seconds", "of them light", "processor seconds", "× that of one vine", "target", "kept?", "peak [MB]", "carbon [kg CO₂ a vine]");
        var one = SeasonCommand.InOwnProcess(Quality.Draft, 1, 1);
        foreach (var (vines, season) in new[] { (1, one), (Tenfold, SeasonCommand.InOwnProcess(Quality.Draft, 1, Tenfold)) })
        {
            var ratio = season.ProcessorSeconds / one.ProcessorSeconds;
            Row($"{vines}", $"{season.Leaves}, {season.Triangles}", Text($"{season.Seconds:0.0}"), Text($"{season.LightSeconds:0.0}"), Text($"{season.ProcessorSeconds:0.0}"),
                Text($"{ratio:0.0}"), vines == 1 ? "" : $"at most {TenfoldTarget}", vines == 1 ? "" : ratio <= TenfoldTarget ? "kept" : "missed", Text($"{season.PeakMegabytes:0}"), Text($"{season.Carbon:0.000}"));
        }
    }
}
