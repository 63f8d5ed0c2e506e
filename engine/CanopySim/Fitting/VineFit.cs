using CanopySim.Light;
using CanopySim.Numerics;
using CanopySim.Weather;

namespace CanopySim.Fitting;

/// <summary>How vines are fitted to notes.</summary>
public sealed record FitOptions
{
    public int Members { get; init; } = 100;

    /// <summary>Steps in which the notes are taken; 1 where a season of each member is dear.</summary>
    public int Steps { get; init; } = 3;

    public ulong Seed { get; init; } = 1;

    /// <summary>Threads; results are the same for any number.</summary>
    public int Threads { get; init; } = 1;

    public Quality Quality { get; init; } = Quality.Rough;

    /// <summary>
    /// False leaves out the seasons that only show what the fitted vines are like, of <see cref="VineFit.CheckedMembers"/> of them:
    /// whoever runs them anyway asks <see cref="VineFit.WithShown"/>. Notes that still contradict the fitted vines are then not taken out.
    /// </summary>
    public bool IsChecked { get; init; } = true;

    /// <summary>Told each season that is done; from any thread.</summary>
    public Action? SeasonDone { get; init; }

    /// <summary>Stops the fit between days of its seasons.</summary>
    public CancellationToken Cancellation { get; init; }
}

/// <summary>What an observation had to say.</summary>
/// <param name="Observation">The observation.</param>
/// <param name="MeanBefore">Mean of what the members showed before any note.</param>
/// <param name="SpreadBefore">Their standard deviation.</param>
/// <param name="MeanAfter">The same after all notes.</param>
/// <param name="SpreadAfter">Their standard deviation then.</param>
/// <param name="IsExcluded">True where it contradicts the model so far that it was not used.</param>
public readonly record struct ObservationEffect(
    Observation Observation, double MeanBefore, double SpreadBefore, double MeanAfter, double SpreadAfter, bool IsExcluded)
{
    /// <summary>Distance of what was seen from what the members showed before, in standard deviations of both.</summary>
    public double SurpriseBefore => VineFit.Surprise(Observation, MeanBefore, SpreadBefore);

    /// <summary>The same after all notes.</summary>
    public double SurpriseAfter => VineFit.Surprise(Observation, MeanAfter, SpreadAfter);

    /// <summary>How much narrower the members stand for it [0 to 1]; negative where they stand wider.</summary>
    public double Narrowing => SpreadBefore > 0 ? 1 - (SpreadAfter / SpreadBefore) : 0;
}

/// <summary>Vines that agree with what was seen.</summary>
/// <param name="Traits">Traits of each member in standard deviations, widened by the model's error, [member][trait].</param>
/// <param name="Before">The same before any note, not widened.</param>
/// <param name="Effects">What each observation had to say, in their order.</param>
public sealed record FittedVines(
    IReadOnlyList<double[]> Traits, IReadOnlyList<double[]> Before, IReadOnlyList<ObservationEffect> Effects);

/// <summary>
/// Fits an ensemble of vines to what was seen of them. An observation that no member comes near is left out and said so: one
/// mistyped length must not bend the vine.
/// </summary>
public static class VineFit
{
    /// <summary>
    /// By how much the members differ more than notes and widths of traits say, for what every member has wrong alike: responses to temperature
    /// and age, the weather of a station for that of the rows. Inflation of an ensemble after Anderson &amp; Anderson 1999,
    /// doi:10.1175/1520-0493(1999)127&lt;2741:AMCIOT&gt;2.0.CO;2, from memory; the size is fitted to ten vines of another model.
    /// </summary>
    public const double ModelError = 1.6;

    /// <summary>Members that show what the fitted vines are like, enough for a mean and a spread.</summary>
    public const int CheckedMembers = 30;

    // An observation so far from all members before, or from the fitted ones after, is left out [standard deviations]. Assumed.
    private const double MostSurpriseBefore = 4;
    private const double MostSurpriseAfter = 3;

    /// <summary>Fits the vines of a scenario.</summary>
    /// <param name="scenario">The block, with the work and water that was given.</param>
    /// <param name="weather">Complete weather to the last observation or farther.</param>
    /// <param name="utcOffsetHours">Local standard time less UTC [h].</param>
    /// <param name="observations">What was seen.</param>
    /// <param name="options">How it is done.</param>
    public static FittedVines Fit(
        Scenario scenario, WeatherSeries weather, double utcOffsetHours, IReadOnlyList<Observation> observations, FitOptions options)
    {
        var before = Draw(options);
        if (observations.Count == 0) return new FittedVines(Widened(before), before, []);
        var run = new Seasons(scenario, weather, utcOffsetHours, observations, options);
        var first = run.Predict(before);
        var excluded = Enumerable.Range(0, observations.Count)
            .Where(k => Surprise(observations[k], Mean(first, k), Spread(first, k)) > MostSurpriseBefore).ToHashSet();
        var (traits, last) = Fit(before, first, excluded, run, observations, options);
        var odd = Enumerable.Range(0, observations.Count)
            .Where(k => !excluded.Contains(k) && Surprise(observations[k], Mean(last, k), Spread(last, k)) > MostSurpriseAfter).ToList();
        if (options.IsChecked && odd.Count > 0)
        {
            excluded.UnionWith(odd);
            (traits, last) = Fit(before, first, excluded, run, observations, options);
        }

        var effects = observations.Select((observation, k) => new ObservationEffect(
            observation, Mean(first, k), Spread(first, k), Mean(last, k), Spread(last, k), excluded.Contains(k)));
        return new FittedVines(Widened(traits), before, [.. effects]);
    }

    /// <summary>Seasons that a fit runs, where nothing has to be fitted twice.</summary>
    public static int SeasonsOf(FitOptions options, int observations) =>
        observations == 0 ? 0 : (options.Members * options.Steps) + (options.IsChecked ? Math.Min(options.Members, CheckedMembers) : 0);

    /// <summary>The fit with what its vines really show, [member][observation].</summary>
    public static FittedVines WithShown(FittedVines fit, double[][] shown) => fit with
    {
        Effects = [.. fit.Effects.Select((effect, k) => effect with { MeanAfter = Mean(shown, k), SpreadAfter = Spread(shown, k) })],
    };

    internal static double Surprise(Observation observation, double mean, double spread) =>
        Math.Abs(observation.Innovation(mean, 0)) / Math.Sqrt((spread * spread) + (observation.StandardError * observation.StandardError));

    private static double[][] Widened(double[][] traits)
    {
        var means = Enumerable.Range(0, VineTraits.All.Count).Select(trait => traits.Average(member => member[trait])).ToArray();
        return [.. traits.Select(member => member
            .Select((value, trait) => means[trait] + (ModelError * (value - means[trait]))).ToArray())];
    }

    private static double[][] Draw(FitOptions options) =>
        [.. Enumerable.Range(0, options.Members).Select(member => Enumerable.Range(0, VineTraits.All.Count)
            .Select(trait => SeededValue.Normal(options.Seed, "vine trait", member, trait)).ToArray())];

    private static (double[][] Traits, double[][] Shown) Fit(
        double[][] traits, double[][] shown, HashSet<int> excluded, Seasons run, IReadOnlyList<Observation> observations, FitOptions options)
    {
        var used = Enumerable.Range(0, observations.Count).Where(k => !excluded.Contains(k)).ToArray();
        for (var step = 0; step < options.Steps; step++)
        {
            var predictions = shown.Select(row => used.Select(k => row[k]).ToArray()).ToList();
            var innovations = predictions.Select((row, member) => used.Select((k, i) => observations[k].Innovation(
                row[i],
                Math.Sqrt(options.Steps) * observations[k].StandardError
                    * SeededValue.Normal(options.Seed, "note error", member, k, step))).ToArray()).ToList();
            var errors = used.Select(k => observations[k].StandardError).ToArray();
            traits = EnsembleSmoother.Step(traits, predictions, innovations, errors, options.Steps);
            if (step < options.Steps - 1) shown = run.Predict(traits);
            else if (options.IsChecked) shown = run.Predict([.. traits.Take(CheckedMembers)]);
        }

        return (traits, shown);
    }

    private static double Mean(double[][] shown, int observation) => shown.Average(row => row[observation]);

    private static double Spread(double[][] shown, int observation)
    {
        var mean = Mean(shown, observation);
        return Math.Sqrt(shown.Sum(row => (row[observation] - mean) * (row[observation] - mean)) / (shown.Length - 1));
    }

    /// <summary>The seasons of the members, as far as something was seen.</summary>
    private sealed class Seasons(
        Scenario scenario, WeatherSeries weather, double utcOffsetHours, IReadOnlyList<Observation> observations, FitOptions options)
    {
        private readonly SeasonOptions _season = new()
        {
            Quality = options.Quality,
            Threads = 1,
            Until = observations.Max(observation => observation.Date),
            IsAssessed = false,
            LeavesOn =
                [.. observations.Where(seen => seen.Quantity == ObservedQuantity.LeafSize).Select(seen => seen.Date).Distinct()],
            Cancellation = options.Cancellation,
        };

        /// <summary>What each member shows, [member][observation].</summary>
        public double[][] Predict(double[][] traits)
        {
            var shown = new double[traits.Length][];
            Workers.Run(options.Threads, traits.Length, () => true, (_, member) =>
            {
                var own = VineTraits.Apply(scenario, traits[member]);
                var season = Simulation.Run(own, weather, utcOffsetHours, _season);
                shown[member] = [.. observations.Select(observation => SeasonReading.Predict(observation, season, own))];
                options.SeasonDone?.Invoke();
            });
            return shown;
        }
    }
}
