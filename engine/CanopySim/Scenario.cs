using CanopySim.Assessment;
using CanopySim.Carbon;
using CanopySim.Fruit;
using CanopySim.Growth;
using CanopySim.Light;
using CanopySim.Parameters;
using CanopySim.Phenology;
using CanopySim.Photosynthesis;
using CanopySim.Training;
using CanopySim.Water;
using CanopySim.Weather;

namespace CanopySim;

/// <summary>Everything that decides a season but the weather itself: what a scenario file says, in the engine's units.</summary>
public sealed record Scenario
{
    [KeyHelp("Name of the block, for reports.")]
    public required string Name { get; init; }

    [KeyHelp("Seed of everything that differs between shoots and leaves by chance.")]
    public ulong Seed { get; init; } = 1;

    [KeyHelp("Where the block lies.")]
    public required Site Site { get; init; }

    [KeyHelp("The weather file.")]
    public required WeatherOptions Weather { get; init; }

    [KeyHelp("Which season, and when it ends.")]
    public SeasonPlan Season { get; init; } = new();

    [KeyHelp("Rows and vines.")]
    public RowLayout Rows { get; init; } = new();

    [KeyHelp("Posts and wires.")]
    public Trellis Trellis { get; init; } = new();

    [KeyHelp("Work in the canopy.")]
    public CanopyWork CanopyWork { get; init; } = new();

    [KeyHelp("When the stages come.")]
    public Cultivar Cultivar { get; init; } = new();

    [KeyHelp("How shoots grow.")]
    public GrowthParameters Growth { get; init; } = new();

    [KeyHelp("Efficiency of a leaf by its age.")]
    public LeafAgeCurve LeafAge { get; init; } = new();

    [KeyHelp("Gas exchange of a leaf.")]
    public LeafParameters Leaf { get; init; } = new();

    [KeyHelp("How blades, wood and ground treat light.")]
    public Optics Optics { get; init; } = new();

    [KeyHelp("Soil water and irrigation.")]
    public SoilParameters Soil { get; init; } = new();

    [KeyHelp("Carbon of the vine.")]
    public CarbonParameters Carbon { get; init; } = new();

    [KeyHelp("Clusters and berries.")]
    public FruitParameters Fruit { get; init; } = new();

    [KeyHelp("Sun and heat on fruit.")]
    public FruitHeatParameters FruitHeat { get; init; } = new();

    [KeyHelp("What makes this season's buds fruitful next year.")]
    public FruitfulnessParameters Fruitfulness { get; init; } = new();
}
