using CanopySim.Parameters;

namespace CanopySim;

/// <summary>Which season is simulated, and when it ends.</summary>
public sealed record SeasonPlan
{
    [KeyHelp("Year of the season's spring; where it is left out, the first year that the weather covers.")]
    public int? Year { get; init; }

    [KeyHelp("Day on which half the buds have broken; where it is left out, from the cultivar's heat sum.")]
    public DateOnly? Budbreak { get; init; }

    [KeyHelp("What ends the season: target_sugar, date, or none (leaf fall, killing frost or the end of the weather).")]
    public HarvestRule Harvest { get; init; } = HarvestRule.TargetSugar;

    [KeyHelp("Harvest day, for harvest: date.")]
    public DateOnly? HarvestDate { get; init; }

    [Parameter("Brix", 10, 30, "Sugar at which the fruit is ripe.", Mark = Mark.Given)]
    public double TargetSugar { get; init; } = 22;
}

/// <summary>What ends a season before leaf fall, frost or the end of the weather do.</summary>
public enum HarvestRule
{
    TargetSugar,
    Date,
    None,
}
