using CanopySim.Assessment;
using CanopySim.Geometry;

namespace CanopySim.Results;

/// <summary>What the season's assessment gave.</summary>
public sealed record AssessmentResult
{
    public required IReadOnlyList<CanopySheetRow> CanopySheet { get; init; }

    /// <summary>Null where veraison was not reached.</summary>
    public required CanopyScoreSummary? CanopyScore { get; init; }

    public required IReadOnlyList<FruitLightRow> FruitLight { get; init; }

    public required IReadOnlyList<FruitLightHourRow> FruitLightHours { get; init; }

    public required IReadOnlyList<FruitHeatRow> FruitHeat { get; init; }

    /// <summary>Null before veraison and without fruit.</summary>
    public required FruitLightSummary? FruitLightSummary { get; init; }

    /// <summary>Null without fruit.</summary>
    public required FruitHeatSummary? FruitHeatSummary { get; init; }

    /// <summary>Null where bloom was not reached.</summary>
    public required NextYearSummary? NextYear { get; init; }

    /// <summary>Of a season in which nothing grew.</summary>
    public static AssessmentResult Nothing { get; } = new()
    {
        CanopySheet = [], CanopyScore = null, FruitLight = [], FruitLightHours = [], FruitHeat = [], FruitLightSummary = null,
        FruitHeatSummary = null, NextYear = null,
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

    public AssessmentResult Finish(SeasonFacts facts, HarvestSummary? harvest) => new()
    {
        CanopySheet = CanopySheet.Rows(_survey, harvest, scenario.Rows.VineSpacing),
        CanopyScore = _survey is { } survey ? CanopyScore.Of(survey) : null,
        FruitLight = _fruit.Light,
        FruitLightHours = _fruit.Hours(),
        FruitHeat = _fruit.Heat,
        FruitLightSummary = _fruit.LightSummary(facts.Stages.Veraison),
        FruitHeatSummary = _fruit.HeatSummary(),
        NextYear = facts.Stages.Bloom is null ? null : _buds.Of(facts.Canopy),
    };
}
