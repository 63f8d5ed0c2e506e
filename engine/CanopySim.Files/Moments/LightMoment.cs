namespace CanopySim.Files.Moments;

/// <summary>Light of one moment: the numbers of <c>light.json</c>.</summary>
public sealed record LightMoment
{
    public required DateTimeOffset TimeUtc { get; init; }

    /// <summary>Sun's angle from the vertical [deg].</summary>
    public required double SunZenithDeg { get; init; }

    /// <summary>Sun's azimuth, clockwise from north [deg].</summary>
    public required double SunAzimuthDeg { get; init; }

    /// <summary>Towards the sun, in the axes of the cell: x across the row, y along it, z up.</summary>
    public required (double X, double Y, double Z) SunDirectionInCell { get; init; }

    public required double CellAcrossM { get; init; }

    public required double CellAlongM { get; init; }

    public required double LeafAreaM2 { get; init; }

    /// <summary>One-sided area of all blades that the sun reaches.</summary>
    public required double SunlitLeafAreaM2 { get; init; }

    public required double GroundSunlitFraction { get; init; }

    /// <summary>Share of the irradiance of a uniform sky that reaches the ground unshaded.</summary>
    public required double SkyGapFraction { get; init; }

    public required LightBand Par { get; init; }

    public required LightBand Nir { get; init; }

    /// <summary>Light in the fruit zone; null where it was not asked for.</summary>
    public FruitZoneMoment? FruitZone { get; init; }
}

/// <summary>
/// PAR in the fruit zone [µmol m⁻² s⁻¹]: on bars in the middle of the row at half the zone's height that look up, right
/// (90°
/// clockwise from the row azimuth) and left, and on the surface of the clusters, null where there are none.
/// </summary>
public sealed record FruitZoneMoment(
    double HeightM, double ParAboveUmolM2S, double UpUmolM2S, double RightUmolM2S, double LeftUmolM2S,
        double? ClustersUmolM2S);

/// <summary>
/// What becomes of the light of a band [W m⁻² of horizontal ground]. Clusters count as wood; reflected is summed from
/// what
/// goes up.
/// </summary>
public sealed record LightBand(
    double IncidentDirectWM2,
    double IncidentDiffuseWM2,
    double AbsorbedLeavesWM2,
    double AbsorbedWoodWM2,
    double AbsorbedGroundWM2,
    double ReflectedWM2);

/// <summary>A leaf in the light of a moment: a row of the moment's <c>leaves.csv</c>.</summary>
public readonly record struct LeafLightRow(
    int LeafId, double AreaM2, double SunlitFraction, double AbsorbedParUmolM2S, double AbsorbedNirWM2);
