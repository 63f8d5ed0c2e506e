using CanopySim.Files.Scenarios;
using CanopySim.Results;

namespace CanopySim.Files.Comparison;

/// <summary>One of the scenarios that are compared, with its season.</summary>
/// <param name="Name">What it is called in tables and pictures; no two are called the same.</param>
/// <param name="Document">The scenario as it was read.</param>
/// <param name="Season">What it gave.</param>
public sealed record ComparedOption(string Name, ScenarioDocument Document, SeasonResult Season)
{
    public Scenario Scenario => Document.Scenario;

    public SeasonSummary Summary => Season.Summary;

    /// <summary>The year in which its season began.</summary>
    public int FirstYear => (Summary.Dates.Budbreak ?? Summary.Dates.End).Year;

    /// <summary>
    /// A day of this season in the year of another, so that options of different years can stand side by side.
    /// </summary>
    public DateOnly InYearOf(ComparedOption other, DateOnly day) => day.AddYears(other.FirstYear - FirstYear);
}
