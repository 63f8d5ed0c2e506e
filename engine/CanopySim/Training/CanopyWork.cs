using CanopySim.Parameters;

namespace CanopySim.Training;

/// <summary>What is done to the canopy in the season.</summary>
public sealed record CanopyWork
{
    [Parameter("1/m", 2, 200, "Shoots kept per metre of canopy.", Mark = Mark.Given)]
    public double ShootsPerMeter { get; init; } = 15;

    [Parameter("m", 0, 2.5, "Height of the zone of old wood from which shoots arise, about the cordon; 0 for spurs on a cordon, more where vines are hedge or minimally pruned.", Mark = Mark.Given)]
    public double BearingZoneHeight { get; init; }

    [Parameter("m", 0, 2.5, "Width of that zone across the row.", Mark = Mark.Given)]
    public double BearingZoneWidth { get; init; }

    [KeyHelp("Toppings: each with a day or a shoot length at which it is done, and the height or the node count that stays.")]
    public IReadOnlyList<Topping> Topping { get; init; } = [];
}

/// <summary>One topping. Exactly one of <see cref="On"/> and <see cref="WhenShootsReach"/>, and of <see cref="Height"/> and <see cref="Nodes"/>.</summary>
public sealed record Topping
{
    [KeyHelp("Day of the topping.")]
    public DateOnly? On { get; init; }

    [Parameter("m", 0.2, 6, "Mean shoot length at which the topping is done.", Mark = Mark.Given)]
    public double? WhenShootsReach { get; init; }

    [Parameter("m", 0.3, 5, "Height above the ground at which shoots are cut.", Mark = Mark.Given)]
    public double? Height { get; init; }

    [Parameter("1", 3, 60, "Nodes that stay on each shoot.", Mark = Mark.Given)]
    public int? Nodes { get; init; }
}
