using CanopySim.Phenology;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim;

/// <summary>Decides whether a day was the season's last, and why.</summary>
internal static class SeasonEnd
{
    // Leaves are down when less than this share of the largest leaf area is left. Assumed.
    private const double LeafFallShare = 0.1;

    /// <summary>harvest, killing_frost, leaf_fall, season_over or until; null when the season goes on.</summary>
    public static string? Reason(
        Scenario scenario, Stages stages, SeasonRecord record, WeatherDay day, DateOnly? until, SeasonCalendar calendar)
    {
        var plan = scenario.Season;
        var harvested = plan.Harvest switch
        {
            HarvestRule.TargetSugar => stages.Ripe is not null,
            HarvestRule.Date => day.Date >= plan.HarvestDate,
            _ => false,
        };
        if (harvested)
        {
            record.NoteHarvest(day.Date);
            return "harvest";
        }

        if (stages.Bloom is not null && day.MinimumTemperatureCelsius <= scenario.Growth.AutumnFrostKill) return "killing_frost";
        if (stages.Bloom is not null && record.LeafAreaShareOfLargest < LeafFallShare) return "leaf_fall";
        if (day.Date >= calendar.LastDay) return "season_over";
        return until is { } last && day.Date >= last ? "until" : null;
    }
}
