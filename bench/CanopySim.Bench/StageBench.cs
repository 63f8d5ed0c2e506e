using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using CanopySim.Geometry;
using CanopySim.Light;
using CanopySim.Photosynthesis;

namespace CanopySim.Bench;

/// <summary>The stages of a day's light and the gas exchange behind it, on the full canopy of first-season (20 July), by quality and threads.</summary>
[Config(typeof(ShortRuns))]
public class StageBench
{
    private static readonly DateOnly Date = new(2025, 7, 20);
    private static readonly Lazy<GrownBlock> Grown = new(() => new GrownBlock(Date));

    private readonly LinkWorkers _workers = new();
    private readonly LinkWorkers _whole = new();

    private LightQuality _quality;
    private SkyFrame _sky = null!;
    private LightOfDay _light = null!;
    private LightMesh _mesh = null!;
    private LightNodes _nodes = null!;
    private LinkDirection[] _directions = [];
    private int[][] _skyLinks = [];
    private LightGeometry _withSuns = null!;
    private CanopyGasExchange _gasExchange = null!;
    private double[] _supply = [];

    [Params(Quality.Draft, Quality.Standard)]
    public Quality Quality { get; set; }

    [Params(1, 2)]
    public int Threads { get; set; }

    internal static Scene SceneFor(Quality quality) => Grown.Value.For(quality);

    private static Scenario Scenario => GrownBlock.Scenario;

    private Scene Scene => _light.Canopy.Scene;

    [GlobalSetup]
    public void Grow()
    {
        _quality = LightQuality.For(Quality);
        _sky = new SkyFrame(Scenario.Rows.Azimuth, _quality.SkyDirectionCount);
        var canopy = Grown.Value.Canopy;
        var light = new CanopyLight(Scenario, Quality, FirstSeason.Offset, Threads);
        light.Place(canopy, changed: true);
        _light = light.Solve(FirstSeason.Weather.Days.Single(day => day.Date == Date));
        _mesh = new LightMesh(Scene, Threads);
        _nodes = new LightNodes(Scene, LightGeometry.StripsOfGround, _sky.Directions.Count);
        _directions = LinkDirection.All(Scene.Cell, _sky.Directions, _quality.SkyPixel);

        // A tiny angle keeps the suns of these very hours and no others: what is left of a day is scattering.
        _withSuns = LightGeometry.Build(Scene, _sky.Directions, _quality with { SunAngle = 0.01 }, Threads);
        _withSuns.Solve(_light.Incident, Scenario.Optics, Threads);
        _gasExchange = new CanopyGasExchange(Scenario, Threads);
        _supply = [.. canopy.Vines.Select(vine => vine.Carbon.SupplyIndex)];
        Trace();
    }

    [Benchmark(Description = "mesh")]
    public int Mesh() => new LightMesh(Scene, Threads).Count;

    [Benchmark(Description = "links by direction")]
    public int Trace()
    {
        _skyLinks = [.. _sky.Directions.Select(_ => new int[_nodes.Count])];
        _workers.Begin(_nodes);
        Workers.Run(Threads, _directions.Length, _workers.Take, (worker, item) =>
            worker.Tracer.Trace(Scene.Cell, _mesh, _nodes, _directions[item], worker.Links, _skyLinks[_directions[item].Index]));
        return _workers.Counters.Count;
    }

    [Benchmark(Description = "table and matrix")]
    public int Count() =>
        LinkMatrix.From(LinkTable.Empty(_nodes.FirstGround).With(_workers.Counters, _nodes, Threads), _skyLinks, _nodes, Threads).Senders.Length;

    [Benchmark(Description = "suns of a day")]
    public int Suns() => new SunRasters(Scene, _mesh, _nodes, _quality, _workers.Suns).Of(_light.Incident, Threads).Length;

    [Benchmark(Description = "scattering of a day")]
    public LightSolution Scattering() => _withSuns.Solve(_light.Incident, Scenario.Optics, Threads);

    [Benchmark(Description = "a day's light with new geometry")]
    public LightSolution Light() =>
        LightGeometry.Build(Scene, _sky.Directions, _quality, Threads, _whole).Solve(_light.Incident, Scenario.Optics, Threads);

    [Benchmark(Description = "gas exchange of a day")]
    public IReadOnlyList<LeafDay> GasExchange() => _gasExchange.Day(_light, FirstSeason.Weather.Days.Single(day => day.Date == Date), 1, _supply);

    // In this process: 28 cases that each grew their own canopy would take longer than what they measure.
    private sealed class ShortRuns : ManualConfig
    {
        public ShortRuns()
        {
            AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance).WithStrategy(RunStrategy.Monitoring).WithWarmupCount(2).WithIterationCount(10));
            AddColumn(StatisticColumn.Median, StatisticColumn.Min);
        }
    }
}
