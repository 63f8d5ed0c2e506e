using CanopySim.Fruit;
using CanopySim.Growth;

namespace CanopySim.Carbon;

/// <summary>What a vine's sinks could take on a day [g CH₂O].</summary>
public readonly record struct SinkDemands(
    double MainAxes, double Laterals, double Fruit, double Thickening, double Roots, double Reserves);

/// <summary>How a vine's carbon was shared on a day [g CH₂O], with what the fruit could have had.</summary>
public sealed record VineDay
{
    public required double NetAssimilation { get; init; }

    public required double Maintenance { get; init; }

    public required double GrowthRespirationCarbon { get; init; }

    /// <summary>Sugar that the leaves could send to the fruit in the day, after respiration and what the other sinks took [g].</summary>
    public required double RipeningCapacity { get; init; }

    public required CarbonLedger Ledger { get; init; }

    public required OrganGrowth Growth { get; init; }

    public required FruitDemand FruitDemand { get; init; }

    /// <summary>Share of its demand that the fruit got [0 to 1]; 1 where it had none.</summary>
    public required double FruitShare { get; init; }
}
