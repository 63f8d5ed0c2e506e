using CanopySim.Parameters;

namespace CanopySim.Training;

/// <summary>Which shoots go first.</summary>
public enum ThinningOrder
{
    /// <summary>The shortest.</summary>
    Weakest,

    /// <summary>Those whose neighbors stand nearest; of equally crowded ones the shortest.</summary>
    Crowded,
}

/// <summary>One shoot thinning. Exactly one of <see cref="ShootsPerMeter"/> and <see cref="ShootsPerVine"/>.</summary>
public sealed record ShootThinning : WorkStep
{
    [Parameter("1/m", 0.5, 200, "Shoots that stay per metre of canopy.", Mark = Mark.Given)]
    public double? ShootsPerMeter { get; init; }

    [Parameter("1", 1, 1000, "Shoots that stay on a vine.", Mark = Mark.Given)]
    public int? ShootsPerVine { get; init; }

    [KeyHelp("Which shoots go first: weakest (the shortest) or crowded (those whose neighbors stand nearest).")]
    public ThinningOrder First { get; init; } = ThinningOrder.Weakest;
}

/// <summary>One tucking: the wires hold every node that there is; what grows later bends freely.</summary>
public sealed record Tucking : WorkStep;

/// <summary>One topping. Exactly one of <see cref="Height"/> and <see cref="Nodes"/>.</summary>
public sealed record Topping : WorkStep
{
    [Parameter("m", 0.3, 5, "Height above the ground at which shoots are cut; where shoots hang, what is lower goes.",
        Mark = Mark.Given)]
    public double? Height { get; init; }

    [Parameter("1", 3, 60, "Nodes that stay on each shoot.", Mark = Mark.Given)]
    public int? Nodes { get; init; }
}

/// <summary>One cut along both sides of every wall of foliage.</summary>
public sealed record SideHedging : WorkStep
{
    [Parameter("m", 0.15, 4, "Width of the wall of foliage that stays, half of it on each side of its middle.",
        Mark = Mark.Given)]
    public required double Width { get; init; }
}

/// <summary>One removal of leaves.</summary>
public sealed record LeafRemoval : ZoneStep
{
    [KeyHelp(
        "Side of the canopy: both, right or left (looking along the row), morning (that faces east) or afternoon.")]
    public CanopySide Side { get; init; } = CanopySide.Both;

    [Parameter("1", 0.01, 1, "Share of the unfolded leaves there that go, chosen by seed.", Mark = Mark.Given)]
    public double Share { get; init; } = 1;

    [KeyHelp("Whether leaves of laterals go too.")]
    public bool Laterals { get; init; } = true;
}

/// <summary>
/// One removal of whole laterals, by the height of the node that bears them; their buds do not push again.
/// </summary>
public sealed record LateralRemoval : ZoneStep
{
    [Parameter("1", 0.01, 1, "Share of the laterals there that go, chosen by seed.", Mark = Mark.Given)]
    public double Share { get; init; } = 1;
}

/// <summary>One cluster thinning. Exactly one of <see cref="ClustersPerShoot"/> and <see cref="Share"/>.</summary>
public sealed record ClusterThinning : WorkStep
{
    [Parameter("1", 1, 5, "Most clusters that stay on a shoot; the upper go.", Mark = Mark.Given)]
    public int? ClustersPerShoot { get; init; }

    [Parameter("1", 0.01, 1,
        "Share of a vine's clusters that go: the upper of a shoot first, those of the shortest shoots first.",
        Mark = Mark.Given)]
    public double? Share { get; init; }
}

/// <summary>What a spray holds that heat or another spray makes risky for the leaves.</summary>
public enum SprayKind
{
    Other,
    Sulfur,
    Oil,
}

/// <summary>
/// One spray: marks the leaf area that hangs in the zone as covered. Nothing is said about what is sprayed or how long
/// it protects.
/// </summary>
public sealed record Spray : WorkStep
{
    [KeyHelp("A name of your own for the spray.")]
    public required string Label { get; init; }

    [KeyHelp(
        "What of it calls for a caution: sulfur, oil, or other. Read the label: this list is not complete.")]
    public SprayKind Kind { get; init; } = SprayKind.Other;

    [Parameter("m", -3, 3,
        "Lower end of what the spray covers: height over the cordon, negative below it; left out, no end.",
        Mark = Mark.Given)]
    public double? From { get; init; }

    [Parameter("m", -3, 3,
        "Upper end of what the spray covers: height over the cordon, negative below it; left out, no end.",
        Mark = Mark.Given)]
    public double? To { get; init; }
}
