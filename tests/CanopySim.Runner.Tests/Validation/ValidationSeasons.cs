using System.Collections.Concurrent;
using CanopySim.Plants;
using CanopySim.Results;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>Runs the seasons that studies ask for, at draft quality: each once, several at a time, one thread each.</summary>
internal sealed class ValidationSeasons
{
    private readonly ValidationWeather _weather = new();
    private readonly ConcurrentDictionary<SeasonCase, Lazy<SeasonResult>> _results = new();
    private readonly ConcurrentDictionary<(SeasonCase Season, DateOnly Day), Lazy<Canopy>> _canopies = new();

    /// <summary>Seasons run so far, those for a canopy alone included.</summary>
    public int Count => _results.Count + _canopies.Count;

    /// <summary>Runs them all, the longest first.</summary>
    public void RunAll(IEnumerable<SeasonCase> cases)
    {
        var longestFirst = cases.Distinct().OrderByDescending(season => season.Work);
        var oneByOne = Partitioner.Create(longestFirst, EnumerablePartitionerOptions.NoBuffering);
        Parallel.ForEach(oneByOne, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, season => Of(season));
    }

    /// <summary>What a season gave.</summary>
    public SeasonResult Of(SeasonCase asked) => _results.GetOrAdd(asked, _ => new Lazy<SeasonResult>(() =>
    {
        var season = Prepared(asked);
        var until = asked.Until is { } last ? new DateOnly(season.Year, last.Month, last.Day) : (DateOnly?)null;
        return Simulation.Run(season.Scenario, season.Weather, season.UtcOffsetHours, Options(asked, season.Year) with { Until = until });
    })).Value;

    public IReadOnlyList<SeasonResult> Of(IEnumerable<SeasonCase> asked) => [.. asked.Select(Of)];

    /// <summary>The canopy on the evening of a day.</summary>
    public Canopy CanopyOn(SeasonCase asked, DateOnly day) => _canopies.GetOrAdd((asked, day), _ => new Lazy<Canopy>(() =>
    {
        var season = Prepared(asked);
        return Simulation.CanopyOn(season.Scenario, season.Weather, season.UtcOffsetHours, Options(asked, season.Year), day);
    })).Value;

    /// <summary>The block and the weather of a season, with its changes.</summary>
    public PreparedSeason Prepared(SeasonCase asked)
    {
        var shipped = _weather.Of(asked);
        var season = shipped with { Scenario = asked.Change(shipped.Scenario, shipped.Weather) };
        return season with { Weather = asked.ChangeWeather(season.Weather, season) };
    }

    private static SeasonOptions Options(SeasonCase asked, int year) =>
        new() { Quality = Quality.Draft, Threads = 1, LeavesOn = asked.LeavesOn(year), Cancellation = Xunit.TestContext.Current.CancellationToken };
}
