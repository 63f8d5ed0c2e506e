using CanopySim.Results;

namespace CanopySim.Tests.Seasons;

/// <summary>The first-season block from budbreak to 22 Brix, run once for all tests that look at it.</summary>
public sealed class WholeSeason
{
    public WholeSeason() => Result = Simulation.Run(
        SeasonCases.FirstSeason, SeasonCases.Northern(SeasonCases.FirstSeason), SeasonCases.UtcOffset, SeasonCases.Draft());

    public SeasonResult Result { get; }
}
