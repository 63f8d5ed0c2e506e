using CanopySim.Carbon;
using CanopySim.Light;
using CanopySim.Phenology;
using CanopySim.Photosynthesis;
using CanopySim.Plants;
using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Results;

/// <summary>What a closed day hands to the record.</summary>
internal sealed record DayFacts
{
    public required WeatherDay Weather { get; init; }

    public required Stages Stages { get; init; }

    public required Canopy Canopy { get; init; }

    /// <summary>Null on days without leaves.</summary>
    public required LightOfDay? Light { get; init; }

    public required double IncidentParMoles { get; init; }

    public required IReadOnlyList<LeafDay> Leaves { get; init; }

    public required IReadOnlyList<VineDay> Vines { get; init; }

    /// <summary>Of the whole cell [l].</summary>
    public required double TranspirationLiters { get; init; }

    public required double SoilWaterFraction { get; init; }
}

/// <summary>What a finished season hands to the record.</summary>
internal sealed record SeasonFacts
{
    public required WeatherSeries Weather { get; init; }

    public required SeasonCalendar Calendar { get; init; }

    public required Stages Stages { get; init; }

    public required Canopy Canopy { get; init; }

    public required CanopyWorker Work { get; init; }

    public required string EndReason { get; init; }

    public required DateOnly LastDay { get; init; }

    public required int SkyDirections { get; init; }

    public required StageSeconds Seconds { get; init; }
}
