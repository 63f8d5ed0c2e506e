using CanopySim.Files.Scenarios;

namespace CanopySim.Files.Batch;

/// <summary>A scenario of a plan.</summary>
/// <param name="Label">Its name, which no other scenario of the plan has.</param>
/// <param name="Template">Its text, from which each season's scenario is made.</param>
/// <param name="Document">The scenario as it stands, with what the plan sets for all.</param>
public sealed record PlanScenario(string Label, ScenarioTemplate Template, ScenarioDocument Document);

/// <summary>A season of weather of a plan.</summary>
/// <param name="File">Weather file, found from where the program runs; null for the scenario's own.</param>
/// <param name="Year">Year of the season's spring; null for the scenario's own.</param>
/// <param name="Seed">Seed of a season made like the record; null for the record or what the scenario says.</param>
public sealed record PlanWeather(string? File, int? Year, ulong? Seed);

/// <summary>
/// A plan: scenarios, seasons of weather and varied keys, crossed to a numbered list of seasons (<see cref="PlanItems"/>).
/// </summary>
public sealed record BatchPlan
{
    public required string Name { get; init; }

    /// <summary>The plan file, as its path was given.</summary>
    public required string Path { get; init; }

    public required IReadOnlyList<PlanScenario> Scenarios { get; init; }

    public required IReadOnlyList<PlanWeather> Weather { get; init; }

    /// <summary>Keys that differ, in the order of the file.</summary>
    public required IReadOnlyList<VariedKey> Varied { get; init; }

    /// <summary>Null where no key has a distribution.</summary>
    public required PlanDesign? Design { get; init; }

    public required int Replicates { get; init; }

    public required ulong Seed { get; init; }

    public required Quality Quality { get; init; }

    /// <summary>Month and day on which every season ends; null for its own end.</summary>
    public required (int Month, int Day)? Until { get; init; }

    public required int ItemsPerShard { get; init; }

    /// <summary>What was understood of the plan itself, for <c>canopysim check</c>.</summary>
    public required IReadOnlyList<UnderstoodValue> Values { get; init; }

    /// <summary>The last day that is simulated of a season; null for its own end.</summary>
    public DateOnly? UntilOf(SeasonCalendar calendar)
    {
        if (Until is not { } last) return null;
        var date = Day(calendar.HeatFrom.Year);
        return date < calendar.HeatFrom ? Day(calendar.HeatFrom.Year + 1) : date;

        // The 29th of February is the last day of February in other years.
        DateOnly Day(int year) => new(year, last.Month, Math.Min(last.Day, DateTime.DaysInMonth(year, last.Month)));
    }
}
