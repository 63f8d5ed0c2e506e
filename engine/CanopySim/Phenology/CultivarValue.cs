using CanopySim.Parameters;

namespace CanopySim.Phenology;

/// <summary>A number with how sure it is and where it comes from.</summary>
/// <param name="Value">In the unit of what it stands for.</param>
/// <param name="Mark">How sure it is.</param>
/// <param name="Source">Its source; the rule by which it is derived.</param>
public readonly record struct MarkedValue(double Value, Mark Mark, string Source);

/// <summary>What the table says for a key of a scenario that gives no value itself.</summary>
/// <param name="Key">Dotted key: <c>fruit.berry_fresh_mass</c>.</param>
/// <param name="Number">The value in the key's unit.</param>
public readonly record struct CultivarValue(string Key, MarkedValue Number);

/// <summary>A row of <see cref="CultivarTable"/>: what is known, recalled or assumed of a cultivar itself.</summary>
public sealed record CultivarRow
{
    public required KnownCultivar Cultivar { get; init; }

    /// <summary>Name in print.</summary>
    public required string Name { get; init; }

    /// <summary>Sum of daily means above 0 °C from day 60 to flowering [°C d].</summary>
    public required MarkedValue FloweringSum { get; init; }

    /// <summary>The same to veraison [°C d].</summary>
    public required MarkedValue VeraisonSum { get; init; }

    /// <summary>Fresh mass of a ripe berry [g].</summary>
    public required MarkedValue BerryMass { get; init; }

    /// <summary>Berries of a cluster at good supply [1].</summary>
    public required MarkedValue BerriesPerCluster { get; init; }

    public required MarkedValue ClustersPerShoot { get; init; }

    /// <summary>Largest blade, against Cabernet-Sauvignon [1].</summary>
    public required MarkedValue BladeSize { get; init; }

    /// <summary>Longest internode, against Cabernet-Sauvignon [1].</summary>
    public required MarkedValue InternodeLength { get; init; }

    /// <summary>Rate of lateral leaves, against Cabernet-Sauvignon [1].</summary>
    public required MarkedValue Laterals { get; init; }
}
