using CanopySim.Light;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Fitting;

/// <summary>How seasons ahead are run.</summary>
public sealed record LookAheadOptions
{
    /// <summary>Threads; results are the same for any number.</summary>
    public int Threads { get; init; } = 1;

    public Quality Quality { get; init; } = Quality.Rough;

    /// <summary>What was seen, for what the seasons show of it.</summary>
    public IReadOnlyList<Observation> Observations { get; init; } = [];

    /// <summary>Told each season that is done; from any thread.</summary>
    public Action? SeasonDone { get; init; }

    public CancellationToken Cancellation { get; init; }
}

/// <summary>
/// Runs fitted vines on into weather that has not come: each member its own vine in its own weather, from the season's beginning to
/// the target sugar or the season's end.
/// </summary>
public static class LookAhead
{
    /// <summary>The members' seasons, in their order.</summary>
    /// <param name="scenario">The block, with the work and water that was given and what is planned.</param>
    /// <param name="members">Numbers of the members: what weather they get.</param>
    /// <param name="traits">Traits of each of them in standard deviations, in the same order.</param>
    /// <param name="weather">Their weather.</param>
    /// <param name="utcOffsetHours">Local standard time less UTC [h].</param>
    /// <param name="options">How.</param>
    public static IReadOnlyList<AheadSeason> Run(
        Scenario scenario, IReadOnlyList<int> members, IReadOnlyList<double[]> traits, WeatherAhead weather,
        double utcOffsetHours, LookAheadOptions options)
    {
        var seasons = new AheadSeason[members.Count];
        var block = ToTarget(scenario);
        var leavesOn = options.Observations.Where(seen => seen.Quantity == ObservedQuantity.LeafSize)
            .Select(seen => seen.Date).Distinct().ToList();
        Workers.Run(options.Threads, members.Count, () => true, (_, i) =>
        {
            var own = VineTraits.Apply(block, traits[i]);
            var season = Simulation.Run(own, weather.Of(members[i]), utcOffsetHours, new SeasonOptions
            {
                Quality = options.Quality,
                Threads = 1,
                LeavesOn = leavesOn,
                IsAssessed = false,
                Cancellation = options.Cancellation,
            });
            seasons[i] = AheadSeason.Of(
                members[i], season, [.. options.Observations.Select(seen => SeasonReading.Predict(seen, season, own))]);
            options.SeasonDone?.Invoke();
        });
        return seasons;
    }

    /// <summary>The vine of one member as it stands on a day, with all that a season tells.</summary>
    public static (Scenario Scenario, SeasonResult Season) Standing(
        Scenario scenario, double[] traits, WeatherSeries known, double utcOffsetHours, DateOnly day, LookAheadOptions options)
    {
        var own = VineTraits.Apply(ToTarget(scenario), traits);
        return (own, Simulation.Run(own, known, utcOffsetHours, new SeasonOptions
        {
            Quality = options.Quality,
            Threads = options.Threads,
            Until = day,
            Cancellation = options.Cancellation,
        }));
    }

    // Until the target is reached: what a grower would do after it is for the grower to say.
    private static Scenario ToTarget(Scenario scenario) =>
        scenario with { Season = scenario.Season with { Harvest = HarvestRule.TargetSugar } };
}
