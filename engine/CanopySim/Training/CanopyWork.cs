using CanopySim.Parameters;

namespace CanopySim.Training;

/// <summary>What is done to the canopy in the season.</summary>
public sealed record CanopyWork
{
    [Parameter("1/m", 2, 200, "Shoots kept per metre of canopy.", Mark = Mark.Given)]
    public double ShootsPerMeter { get; init; } = 15;

    [Parameter("m", 0, 2.5,
        "Height of the zone of old wood from which shoots arise, about the cordon; 0 for spurs on a cordon, more where "
        + "vines are hedge or minimally pruned.", Mark = Mark.Given)]
    public double BearingZoneHeight { get; init; }

    [Parameter("m", 0, 2.5, "Width of that zone across the row.", Mark = Mark.Given)]
    public double BearingZoneWidth { get; init; }

    [KeyHelp(
        "When the wires take hold of shoots: as_they_grow, when_tucked (at each tucking, all nodes that there are) or "
        + "never.")]
    public ShootLeading ShootsLed { get; init; } = ShootLeading.AsTheyGrow;

    [KeyHelp("Shoot thinnings: each with its time, and the shoots per metre of canopy or per vine that stay.")]
    public IReadOnlyList<ShootThinning> ShootThinning { get; init; } = [];

    [KeyHelp("Tuckings, for shoots_led: when_tucked: each with its time.")]
    public IReadOnlyList<Tucking> Tucking { get; init; } = [];

    [KeyHelp("Toppings: each with its time, and the height or the node count that stays.")]
    public IReadOnlyList<Topping> Topping { get; init; } = [];

    [KeyHelp("Cuts along the sides of the canopy: each with its time and the width that stays.")]
    public IReadOnlyList<SideHedging> SideHedging { get; init; } = [];

    [KeyHelp("Leaf removals: each with its time, zone, side and share of the leaves there.")]
    public IReadOnlyList<LeafRemoval> LeafRemoval { get; init; } = [];

    [KeyHelp("Removals of whole laterals: each with its time, zone and share of the laterals there.")]
    public IReadOnlyList<LateralRemoval> LateralRemoval { get; init; } = [];

    [KeyHelp("Cluster thinnings: each with its time, and the clusters a shoot that stay or the share that goes.")]
    public IReadOnlyList<ClusterThinning> ClusterThinning { get; init; } = [];

    [KeyHelp(
        "Sprays: each with its time, a label of your own and the zone that it covers. Follow the product's label and "
        + "local rules.")]
    public IReadOnlyList<Spray> Sprays { get; init; } = [];
}

/// <summary>When the wires of the trellis take hold of a shoot.</summary>
public enum ShootLeading
{
    AsTheyGrow,
    WhenTucked,
    Never,
}
