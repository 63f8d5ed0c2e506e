using CanopySim.Assessment;
using CanopySim.Growth;
using CanopySim.Protection;
using CanopySim.Training;
using CanopySim.Views;

namespace CanopySim.Results;

/// <summary>What a season gave. Names follow the results files; units stand in the names.</summary>
public sealed record SeasonResult
{
    public required SeasonSummary Summary { get; init; }

    public required IReadOnlyList<DayRow> Days { get; init; }

    public required IReadOnlyList<LeafAgeRow> LeafAges { get; init; }

    public required IReadOnlyList<LeafRow> Leaves { get; init; }

    public required LeafAgeCurve AgeCurve { get; init; }

    /// <summary>The canopy at veraison, or with the most leaf where that was not reached; null where nothing grew.</summary>
    public CanopyPortrait? Portrait { get; init; }
    /// <summary>Canopy sheet, light and heat on fruit, next year's buds.</summary>
    public AssessmentResult Assessment { get; init; } = AssessmentResult.Nothing;
    /// <summary>Work that was done in the canopy, in its order.</summary>
    public IReadOnlyList<WorkDone> Work { get; init; } = [];

    /// <summary>The tips of each day with shoots.</summary>
    public IReadOnlyList<TipSurvey> Tips { get; init; } = [];

    /// <summary>Sprays that were done, in their order.</summary>
    public IReadOnlyList<SprayOnDay> Sprays { get; init; } = [];

    /// <summary>Leaf that came after each spray, by zone, on the last evening; none where nothing was sprayed.</summary>
    public IReadOnlyList<ZoneCover> SprayCover { get; init; } = [];
}

/// <summary>A row of <c>days.csv</c>. Null where a quantity does not exist yet.</summary>
public sealed record DayRow
{
    public required DateOnly Date { get; init; }

    /// <summary>dormant, budbreak, bloom, veraison or ripe: the last stage reached.</summary>
    public required string Stage { get; init; }

    public required double ThermalTimeDegCD { get; init; }

    public required double NodesPerShoot { get; init; }

    public required double ShootLengthCm { get; init; }

    public required double LeafAreaM2PerVine { get; init; }

    public required double LateralLeafAreaM2PerVine { get; init; }

    public required double? MeanLeafAgeD { get; init; }

    public required double? MeanLeafEfficiency { get; init; }

    public required double IncidentParMolM2 { get; init; }

    public required double AbsorbedParMolPerVine { get; init; }

    public required double FractionParAbsorbed { get; init; }

    public required double NetAssimilationGCo2PerVine { get; init; }

    public required double RespirationGCo2PerVine { get; init; }

    public required double ReservesGPerVine { get; init; }

    public required double FruitDryMassGPerVine { get; init; }

    public required double? SugarBrix { get; init; }

    public required double? RipeningCapacityGPerKgD { get; init; }

    public required double TranspirationLPerVine { get; init; }

    public required double SoilWaterFraction { get; init; }

    /// <summary>Share of primary shoots whose tendrils stand above the tip.</summary>
    public required double GrowingTipsFraction { get; init; }

    /// <summary>Leaf area that unfolded or expanded since its leaf was last sprayed, or never was; null where no spray is planned.</summary>
    public double? LeafAreaUnsprayedM2PerVine { get; init; }
}

/// <summary>A row of <c>leaf_ages.csv</c>: a ten-day class of leaf age on a day.</summary>
public sealed record LeafAgeRow(
    DateOnly Date,
    int AgeFromD,
    int AgeToD,
    double LeafAreaM2PerVine,
    double AbsorbedParMolPerVine,
    double NetAssimilationGCo2PerVine,
    double MeanEfficiency);

/// <summary>A row of <c>leaves.csv</c>: one leaf on an asked day.</summary>
public sealed record LeafRow(
    DateOnly Date,
    int LeafId,
    int Vine,
    int Shoot,
    int Order,
    int Rank,
    DateOnly UnfoldedOn,
    int AgeD,
    double AreaCm2,
    double XM,
    double YM,
    double ZM,
    double Efficiency,
    double AbsorbedParMolD,
    double NetAssimilationGCo2D);
