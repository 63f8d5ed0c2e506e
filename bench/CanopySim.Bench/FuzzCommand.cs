using System.Diagnostics;
using System.Globalization;
using CanopySim.Files.Tests.Fuzz;

namespace CanopySim.Bench;

/// <summary><c>fuzz</c>: reads damaged files by the million. Exit 1 where one is neither read nor refused as it should be.</summary>
internal static class FuzzCommand
{
    private const string Usage = "fuzz [--count N] [--seed S] [--format scenario|weather|epw|sensors|plan|notes] [--index I] [--out DIR]";

    public static int Run(string[] arguments)
    {
        var options = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i + 1 < arguments.Length; i += 2) options[arguments[i]] = arguments[i + 1];
        if (arguments.Length % 2 != 0 || options.Keys.Except(["--count", "--seed", "--format", "--index", "--out"]).Any()
                || !ulong.TryParse(options.GetValueOrDefault("--seed", "2"), CultureInfo.InvariantCulture, out var seed)
                || !long.TryParse(options.GetValueOrDefault("--count", "1000000"), CultureInfo.InvariantCulture, out var count)
                || !long.TryParse(options.GetValueOrDefault("--index", "0"), CultureInfo.InvariantCulture, out var from))
        {
            Console.Error.WriteLine(Usage);
            return 2;
        }

        if (options.ContainsKey("--index")) count = 1;
        var formats = FuzzFormat.All.Where(format => options.GetValueOrDefault("--format", format.Name) == format.Name).ToArray();
        if (formats.Length == 0)
        {
            Console.Error.WriteLine(Usage);
            return 2;
        }

        var folder = options.GetValueOrDefault("--out", "fuzz-faults");
        var faults = 0;
        foreach (var format in formats)
        {
            // Two of each other format for each EPW, where all are asked for.
            var share = formats.Length == 1 ? count : format == FuzzFormat.Epw ? count - (count * 2 / 11 * 5) : count * 2 / 11;
            faults += Run(format, seed, from, share, folder);
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"peak memory {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB"));
        return faults == 0 ? 0 : 1;
    }

    private static int Run(FuzzFormat format, ulong seed, long from, long count, string folder)
    {
        var fuzz = new FileFuzz(format, seed);
        Console.WriteLine($"{format.Name}: reading {count} files of seed {seed} as {fuzz.Path}, which stays should the program die of one");
        var started = Stopwatch.GetTimestamp();
        var run = FuzzRun.Of(fuzz, from, count);
        var seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{format.Name}: {run.Read + run.Refused} files in {seconds:0.0} s: {run.Read} read, {run.Refused} refused, {run.Faults.Count} faults; slowest {run.Slowest.TotalMilliseconds:0.0} ms (index {run.SlowestIndex}), most allocated for one {run.MostBytes / 1e6:0.0} MB"));
        foreach (var fault in run.Faults)
        {
            Directory.CreateDirectory(folder);
            var path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{format.Name}-{seed}-{fault.Index}{Path.GetExtension(format.FileName)}"));
            File.WriteAllBytes(path, fault.Bytes);
            Console.WriteLine($"{path}: {fault}");
        }

        fuzz.Dispose();
        return run.Faults.Count;
    }
}
