namespace CanopySim.Results;

/// <summary>The season in numbers: <c>summary.json</c> but for what only the runner knows (hashes, versions).</summary>
public sealed record SeasonSummary
{
    public required string Scenario { get; init; }

    public required ulong Seed { get; init; }

    public required string Quality { get; init; }

    public required IReadOnlyList<string> EstimatedInputs { get; init; }

    public required int FilledGaps { get; init; }

    public required ThermalTimeBasis ThermalTime { get; init; }

    public required StageDates Dates { get; init; }

    /// <summary>Dates by the published sums of the cultivar, for comparison; null where the weather does not reach them.</summary>
    public required PublishedDates PublishedSums { get; init; }

    public required string EndReason { get; init; }

    /// <summary>At veraison; null where it was not reached.</summary>
    public required CanopySummary? Canopy { get; init; }

    public required double? NodesAtBloom { get; init; }

    /// <summary>At harvest or at the end; null where there was no fruit.</summary>
    public required HarvestSummary? Harvest { get; init; }

    /// <summary>At veraison; null where it was not reached.</summary>
    public CanopyScoreSummary? CanopyScore { get; init; }

    /// <summary>From veraison to harvest or the end; null without fruit then.</summary>
    public FruitLightSummary? FruitLight { get; init; }

    /// <summary>From set to harvest or the end; null without fruit.</summary>
    public FruitHeatSummary? FruitHeat { get; init; }

    /// <summary>Null where bloom was not reached.</summary>
    public NextYearSummary? NextYear { get; init; }

    public required SeasonTotals Season { get; init; }

    /// <summary>Mean from veraison to the end of ripening [g kg⁻¹ d⁻¹].</summary>
    public required double? RipeningCapacityGPerKgD { get; init; }

    public required IReadOnlyList<LeafAgeShare> RipeningCarbonByLeafAge { get; init; }

    /// <summary>Sentences on planned work that could not be done as planned.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>What to heed where the season's work can hurt people or vines; empty without such work.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    public required SeasonChecks Checks { get; init; }

    public required StageSeconds Seconds { get; init; }
}

public sealed record ThermalTimeBasis(double BaseDegC, string Method);

public sealed record StageDates(
    DateOnly? Budbreak, DateOnly? Bloom, DateOnly? Veraison, DateOnly? TargetSugar, DateOnly? Harvest, DateOnly End);

public sealed record PublishedDates(DateOnly? Flowering, DateOnly? Veraison);

public sealed record CanopySummary
{
    public required double ShootsPerVine { get; init; }

    public required double ShootsPerM { get; init; }

    public required double CanopyMPerRowM { get; init; }

    public required double NodesPerShoot { get; init; }

    public required double ShootLengthCm { get; init; }

    public required double PrimaryLeafAreaPerShootCm2 { get; init; }

    public required double LateralLeafAreaPerShootCm2 { get; init; }

    public required double LeafAreaM2PerVine { get; init; }

    public required double LeafAreaM2PerM { get; init; }

    /// <summary>Mean number of leaves that a probe through the fruit zone meets.</summary>
    public required double LeafLayerNumber { get; init; }

    public required double GapFraction { get; init; }

    public required double InteriorLeafFraction { get; init; }

    public required double? InteriorClusterFraction { get; init; }

    /// <summary>Share of primary shoots whose tendrils stand above the tip.</summary>
    public required double GrowingTipsFraction { get; init; }
}

public sealed record HarvestSummary(
    double YieldKgPerVine, double YieldTPerHa, double? SugarBrix, double? LeafAreaM2PerKgFruit, double PruningsKgPerVine, double? YieldToPrunings);

/// <summary>Sums of the season. Leaf respiration, at air temperature, is in net assimilation already.</summary>
public sealed record SeasonTotals(
    double NetAssimilationKgCo2PerVine, double RespirationKgCo2PerVine, double TranspirationLPerVine, double AbsorbedParMolPerVine,
    double LeafRespirationKgCo2PerVine);

/// <summary>Share of the leaves' net carbon gain of the ripening weeks that came from leaves of an age class.</summary>
public sealed record LeafAgeShare(int FromD, int ToD, double Share);

public sealed record SeasonChecks(
    double LightClosureMax, double CarbonClosureMaxRelative, int LeavesMax, int TrianglesMax, int SkyDirections);

/// <summary>Where the time went [s]; placing the canopy and linking its faces is part of light.</summary>
public sealed record StageSeconds(double Total, double Light, double LightGeometry, double GasExchange);
