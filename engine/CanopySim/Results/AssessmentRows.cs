using CanopySim.Assessment;
using CanopySim.Parameters;

namespace CanopySim.Results;

/// <summary>A row of <c>canopy_sheet.csv</c>.</summary>
public sealed record CanopySheetRow
{
    /// <summary>Name for programs.</summary>
    public required string Item { get; init; }

    /// <summary>Name for readers.</summary>
    public required string Name { get; init; }

    /// <summary>veraison or harvest.</summary>
    public required string At { get; init; }

    /// <summary>Number of the wall, from 1; null for the whole canopy.</summary>
    public int? Wall { get; init; }

    /// <summary>In <see cref="Unit"/>; null where there is nothing to measure or the model does not see it.</summary>
    public required double? Value { get; init; }

    /// <summary>"1/m", "cm", "cm2", "m2/m", "m2/m3", "m2/kg", "kg/m", "share", or "1" for a plain number.</summary>
    public required string Unit { get; init; }

    /// <summary>Standard error of the sample that the value was read from; null where it is no sample.</summary>
    public double? SamplingError { get; init; }

    public required double? Low { get; init; }

    public required double? High { get; init; }

    public required Mark Mark { get; init; }

    public required string Source { get; init; }

    public required SheetVerdict Verdict { get; init; }

    /// <summary>What the item says, in plain words.</summary>
    public required string Meaning { get; init; }
}

/// <summary>A row of <c>fruit_light.csv</c>: a side's clusters on a day. PAR falls on their whole outer surface.</summary>
public sealed record FruitLightRow(
    DateOnly Date, FruitSide Side, int Clusters, double ParMolM2, double IncidentParMolM2, double? ShareOfIncident, double SunlitShare,
    double? MorningShare);

/// <summary>A row of <c>fruit_light_hours.csv</c>: an hour of the day, mean over the days of a week counted from bloom.</summary>
public sealed record FruitLightHourRow(
    DateOnly From, DateOnly To, int Hour, FruitSide Side, double ParUmolM2S, double IncidentParUmolM2S, double SunlitShare,
    double AirTemperatureDegC, double SurfaceTemperatureDegC);

/// <summary>A row of <c>fruit_heat.csv</c>: the warmest spots of a side's clusters on a day; hours are means over its clusters.</summary>
public sealed record FruitHeatRow(
    DateOnly Date, FruitSide Side, double HighestAirDegC, double HighestSurfaceDegC, double HighestAboveAirDegC,
    double HoursAtBrowning, double HoursAtNecrosis);

/// <summary>Light on the clusters from veraison to harvest or the end: means over days.</summary>
public sealed record FruitLightSummary
{
    public required double ParMolM2D { get; init; }

    public required double? ShareOfIncident { get; init; }

    /// <summary>Share of the clusters' surface in the sun, mean over hours with light.</summary>
    public required double SunlitShare { get; init; }

    /// <summary>Share of the clusters' PAR that came before noon.</summary>
    public required double? MorningShare { get; init; }

    public required IReadOnlyList<FruitSideLight> Sides { get; init; }
}

public sealed record FruitSideLight(
    FruitSide Side, int Clusters, double ParMolM2D, double? ShareOfIncident, double SunlitShare, double? MorningShare);

/// <summary>Heat of the fruit's surface from set to harvest or the end; hours are means over clusters, days those with any cluster so warm.</summary>
public sealed record FruitHeatSummary
{
    public required double HighestSurfaceDegC { get; init; }

    public required DateOnly HighestOn { get; init; }

    public required FruitSide HighestSide { get; init; }

    public required double HighestAboveAirDegC { get; init; }

    public required double BrowningDegC { get; init; }

    public required double NecrosisDegC { get; init; }

    public required IReadOnlyList<FruitSideHeat> Sides { get; init; }
}

public sealed record FruitSideHeat(
    FruitSide Side, double HighestSurfaceDegC, double HoursAtBrowning, double HoursAtNecrosis, int DaysAtBrowning, int DaysAtNecrosis);

/// <summary>How fruitful this season's buds will be next year, against the best; light is that of the renewal zone about noon.</summary>
public sealed record NextYearSummary
{
    /// <summary>Mean over shoots [share of the best].</summary>
    public required double Fruitfulness { get; init; }

    /// <summary>Standard deviation over shoots.</summary>
    public required double Spread { get; init; }

    public required double Least { get; init; }

    public required double Most { get; init; }

    public required int Shoots { get; init; }

    public required double LightFactor { get; init; }

    public required double TemperatureFactor { get; init; }

    public required double ParUmolM2S { get; init; }

    /// <summary>First and last day on which buds laid down clusters.</summary>
    public required DateOnly From { get; init; }

    public required DateOnly To { get; init; }
}

/// <summary>The part of the scorecard that a model can see.</summary>
public sealed record CanopyScoreSummary(int Points, int MostPoints, IReadOnlyList<CanopyScoreItem> Items);

public sealed record CanopyScoreItem(string Item, int Points);
