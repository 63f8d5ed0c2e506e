using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using CanopySim.Geometry;
using CanopySim.Light;

namespace CanopySim.Bench;

/// <summary>Who sees whom in the full canopy of first-season (20 July), by quality: what light costs on a day with new geometry.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 1, iterationCount: 5)]
public class LightBench
{
    private Scene _scene = null!;
    private SkyFrame _sky = null!;

    [Params(Quality.Draft, Quality.Standard)]
    public Quality Quality { get; set; }

    [Params(1, 2)]
    public int Threads { get; set; }

    [GlobalSetup]
    public void Grow()
    {
        var options = new SeasonOptions { Quality = Quality.Draft, Threads = 2 };
        var canopy = Simulation.CanopyOn(FirstSeason.Scenario, FirstSeason.Weather, FirstSeason.Offset, options, new DateOnly(2025, 7, 20));
        _scene = new CanopyScene(FirstSeason.Scenario).Place(canopy, SceneDetail.ForLight).Scene;
        _sky = new SkyFrame(FirstSeason.Scenario.Rows.Azimuth, LightQuality.For(Quality).SkyDirectionCount);
    }

    [Benchmark]
    public LightGeometry Links() => LightGeometry.Build(_scene, _sky.Directions, LightQuality.For(Quality), Threads);
}
