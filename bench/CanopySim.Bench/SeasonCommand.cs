using System.Diagnostics;
using System.Text.Json;

namespace CanopySim.Bench;

/// <summary>A season and what it took.</summary>
/// <param name="Carbon">Net assimilation [kg CO₂ a vine].</param>
/// <param name="Ripe">Day of the target sugar; null where it was not reached.</param>
/// <param name="Leaves">Most leaves in the cell.</param>
/// <param name="Triangles">Most triangles in the cell.</param>
/// <param name="Closure">Widest gap of a light budget.</param>
/// <param name="Seconds">Gone by.</param>
/// <param name="ProcessorSeconds">Of all threads.</param>
/// <param name="LightSeconds">Of those gone by, light's.</param>
/// <param name="PeakMegabytes">Peak of the process, runtime and weather included.</param>
internal sealed record SeasonCost(
    double Carbon, DateOnly? Ripe, int Leaves, int Triangles, double Closure, double Seconds, double ProcessorSeconds, double LightSeconds, double PeakMegabytes);

/// <summary><c>season</c>: one season of first-season in a process of its own, whose peak of memory is then the season's; prints JSON.</summary>
internal static class SeasonCommand
{
    private const string Usage = "season [--quality draft|standard|fine] [--threads N] [--vines N]";

    public static int Run(string[] arguments)
    {
        if (Options.Read(arguments, Usage, ("--quality", "draft"), ("--threads", "1"), ("--vines", "1")) is not { } options) return 2;
        var scenario = FirstSeason.Scenario;
        scenario = scenario with { Rows = scenario.Rows with { VinesInCell = options.Number("--vines") } };
        var weather = FirstSeason.Weather;
        var clock = Stopwatch.StartNew();
        var processor = Environment.CpuUsage.TotalTime;
        var summary = Simulation.Run(scenario, weather, FirstSeason.Offset, new SeasonOptions
        {
            Quality = Enum.Parse<Quality>(options.Text("--quality"), ignoreCase: true),
            Threads = options.Number("--threads"),
            Seconds = () => clock.Elapsed.TotalSeconds,
        }).Summary;
        Console.WriteLine(JsonSerializer.Serialize(new SeasonCost(
            summary.Season.NetAssimilationKgCo2PerVine,
            summary.Dates.TargetSugar,
            summary.Checks.LeavesMax,
            summary.Checks.TrianglesMax,
            summary.Checks.LightClosureMax,
            clock.Elapsed.TotalSeconds,
            (Environment.CpuUsage.TotalTime - processor).TotalSeconds,
            summary.Seconds.Light,
            Machine.PeakMegabytes)));
        return 0;
    }

    /// <summary>The same in a child of this process.</summary>
    public static SeasonCost InOwnProcess(Quality quality, int threads, int vines)
    {
        var program = Environment.ProcessPath ?? throw new InvalidOperationException("the program's own path is unknown");
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true };
        if (Path.GetFileNameWithoutExtension(program) == "dotnet") start.ArgumentList.Add(typeof(SeasonCommand).Assembly.Location);
        foreach (var argument in (string[])["season", "--quality", $"{quality}", "--threads", $"{threads}", "--vines", $"{vines}"]) start.ArgumentList.Add(argument);
        using var child = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start");
        var output = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        if (child.ExitCode != 0) throw new InvalidOperationException($"the season ended with {child.ExitCode}");
        return JsonSerializer.Deserialize<SeasonCost>(output) ?? throw new InvalidOperationException("the season printed nothing");
    }
}
