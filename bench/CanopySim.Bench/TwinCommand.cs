using System.Diagnostics;
using System.Globalization;
using CanopySim.Files.Tests.Forecast.Twins;
using static CanopySim.Bench.Tables;

namespace CanopySim.Bench;

/// <summary>
/// <c>twins</c>: forecasts vines whose season is known and prints how often what came lay inside the 80 % range, and how wide that was. Exit
/// 1 where a share of all dates is not 70 to 90 %.
/// </summary>
internal static class TwinCommand
{
    private const string Usage = "twins [--twins N] [--first N] [--members N] [--dates MMDD,…] [--shared 0,1] [--scenario FILE] [--readings FILE.csv]";

    public static int Run(string[] arguments)
    {
        if (Options.Read(
                arguments, Usage, ("--twins", "60"), ("--first", "0"), ("--members", "40"), ("--dates", "0425,0515,0620,0815"),
                ("--shared", "0,1"), ("--scenario", "scenarios/warm-valley/scenario.yaml"), ("--readings", "")) is not { } options)
        {
            return 2;
        }

        var block = TwinBlock.Read(options.Text("--scenario"));
        var (first, count, members) = (options.Number("--first"), options.Number("--twins"), options.Number("--members"));
        var dates = options.Numbers("--dates").Select(date => new DateOnly(block.FirstDay.Year, date / 100, date % 100)).ToList();
        var holds = true;
        foreach (var shared in options.Numbers("--shared"))
        {
            var started = Stopwatch.GetTimestamp();
            var readings = new List<TwinReading>();
            for (var twin = first; twin < first + count; twin++)
            {
                var truth = new TwinTruth(block, (ulong)twin + 1, shared == 1);
                foreach (var date in dates)
                {
                    var told = TwinTrial.Run(block, truth, date, members, (ulong)twin + 1, Environment.ProcessorCount);
                    readings.AddRange(told);
                    if (options.Text("--readings") is { Length: > 0 } file) Append(file, twin, shared, told);
                }

                Console.Error.Write($"\r{twin - first + 1} twins ");
            }

            Console.Error.WriteLine();
            Console.WriteLine();
            Console.WriteLine(Text($"{count} twins that {(shared == 1 ? "share the model" : "do not share the model")}, {members} vines a forecast, {Stopwatch.GetElapsedTime(started).TotalMinutes:0} min. {Machine.Line}"));
            holds &= Print(readings) || shared == 1;
        }

        return holds ? 0 : 1;
    }

    private static void Append(string file, int twin, int shared, IEnumerable<TwinReading> told)
    {
        if (!File.Exists(file)) File.WriteAllText(file, "twin,shared,what,asked_on,came,p10,p50,p90\n");
        File.AppendAllLines(file, told.Select(reading => string.Create(
            CultureInfo.InvariantCulture,
            $"{twin},{shared},{reading.Quantity},{reading.AsOf:yyyy-MM-dd},{reading.Truth:R},{reading.P10:R},{reading.P50:R},{reading.P90:R}")));
    }

    private static bool Print(List<TwinReading> readings)
    {
        PrintHeader("what", "asked on", "forecasts", "inside 80 % range", "came earlier or less", "error of the middle, median", "width, median");
        var holds = true;
        foreach (var quantity in readings.GroupBy(reading => reading.Quantity))
        {
            foreach (var date in quantity.GroupBy(reading => reading.AsOf)) PrintRow(quantity.Key, $"{date.Key:d MMMM}", [.. date]);
            var share = PrintRow(quantity.Key, "all", [.. quantity]);
            holds &= share is >= 0.7 and <= 0.9;
        }

        return holds;
    }

    private static double PrintRow(string what, string when, List<TwinReading> of)
    {
        var inside = of.Count(reading => reading.IsInside) / (double)of.Count;
        var unit = what == TwinTrial.LeafArea ? " m²" : " d";
        Row(
            what, when, Text($"{of.Count}"), Text($"{100 * inside:0} %"),
            Text($"{100.0 * of.Count(reading => reading.Truth < reading.P10) / of.Count:0} %"),
            Text($"{Median(of.Select(reading => Math.Abs(reading.Truth - reading.P50))):0.0#}{unit}"),
            Text($"{Median(of.Select(reading => reading.P90 - reading.P10)):0.0#}{unit}"));
        return inside;
    }

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Where(value => !double.IsNaN(value)).Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
