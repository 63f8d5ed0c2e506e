using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using CanopySim.Results;

namespace CanopySim.Bench;

/// <summary>A whole season of first-season without files and charts, by quality and threads.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 0, iterationCount: 2)]
[MemoryDiagnoser]
public class SeasonBench
{
    [Params(Quality.Draft, Quality.Standard)]
    public Quality Quality { get; set; }

    [Params(1, 2)]
    public int Threads { get; set; }

    [Benchmark]
    public SeasonResult Season() =>
        Simulation.Run(FirstSeason.Scenario, FirstSeason.Weather, FirstSeason.Offset, new SeasonOptions { Quality = Quality, Threads = Threads });
}
