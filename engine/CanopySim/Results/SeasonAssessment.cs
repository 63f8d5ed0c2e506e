using CanopySim.Assessment;
using CanopySim.Geometry;

namespace CanopySim.Results;

/// <summary>Rows of the season's assessment; its numbers stand in the summary.</summary>
public sealed record AssessmentResult
{
    public required IReadOnlyList<CanopySheetRow> CanopySheet { get; init; }

    public required IReadOnlyList<FruitLightRow> FruitLight { get; init; }

    public required IReadOnlyList<FruitLightHourRow> FruitLightHours { get; init; }

    public required IReadOnlyList<FruitHeatRow> FruitHeat { get; init; }

    /// <summary>Of a season in which nothing grew.</summary>
    public static AssessmentResult Nothing { get; } = new()
    {
        CanopySheet = [],
        FruitLight = [],
        FruitLightHours = [],
        FruitHeat = [],
    };
}

/// <summary>Assesses canopy, fruit and buds as the season goes; it changes nothing in it.</summary>
internal sealed class SeasonAssessment(Scenario scenario)
{
    private readonly FruitRecord _fruit = new(scenario);
    private readonly BudFruitfulness _buds = new(scenario.Fruitfulness, scenario.Optics);

    private CanopySurvey? _survey;

    /// <summary>The canopy at veraison; null before it.</summary>
    public CanopySummary? Canopy => _survey?.Canopy;

    public void Add(DayFacts day, PlacedCanopy? placed)
    {
        if (day.Stages.Veraison == day.Weather.Date && placed is not null) _survey = CanopySurvey.Of(scenario, day.Canopy, placed);
        if (day.Light is not { } light) return;
        _fruit.Add(day, light);
        _buds.Add(day.Canopy, light, day.Weather);
    }

    /// <summary>Score of the canopy at veraison; null before it.</summary>
    public CanopyScoreSummary? Score => _survey is { } survey ? CanopyScore.Of(survey) : null;

    /// <summary>From veraison on; null before it and without fruit.</summary>
    public FruitLightSummary? FruitLight(DateOnly? veraison) => _fruit.LightSummary(veraison);

    /// <summary>From set on; null without fruit.</summary>
    public FruitHeatSummary? FruitHeat => _fruit.HeatSummary();

    /// <summary>Null where bloom was not reached.</summary>
    public NextYearSummary? NextYear(SeasonFacts facts) => facts.Stages.Bloom is null ? null : _buds.Of(facts.Canopy);

    public AssessmentResult Finish(HarvestSummary? harvest) => new()
    {
        CanopySheet = CanopySheet.Rows(_survey, harvest, scenario.Rows.VineSpacing),
        FruitLight = _fruit.Light,
        FruitLightHours = _fruit.Hours(),
        FruitHeat = _fruit.Heat,
    };
}
