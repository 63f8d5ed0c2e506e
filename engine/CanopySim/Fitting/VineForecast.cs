using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Fitting;

/// <summary>How a forecast is made.</summary>
public sealed record ForecastOptions
{
    public int Members { get; init; } = 100;

    /// <summary>Members on which each option is tried, spread evenly from the earliest to the latest ripe; 0 for no options.</summary>
    public int MembersOfOption { get; init; } = 6;

    public ulong Seed { get; init; } = 1;

    /// <summary>Threads; results are the same for any number.</summary>
    public int Threads { get; init; } = 1;

    public Quality Quality { get; init; } = Quality.Rough;

    /// <summary>Quality of the one season that shows the vine as it stands.</summary>
    public Quality StandingQuality { get; init; } = Quality.Draft;

    /// <summary>Told how many seasons are done and how many there will be; from any thread.</summary>
    public Action<int, int>? Progress { get; init; }

    public CancellationToken Cancellation { get; init; }
}

/// <summary>What an option does, member by member against the same vine in the same weather without it.</summary>
/// <param name="Option">The option.</param>
/// <param name="Pairs">Members that were tried, without and with it.</param>
/// <param name="Fault">Why it cannot be had; empty where it can.</param>
public sealed record OptionAhead(
    VineOption Option, IReadOnlyList<(AheadSeason Without, AheadSeason With)> Pairs, string Fault = "")
{
    /// <summary>Days by which the fruit is ripe later; negative for earlier. Members that do not get ripe either way are left out.</summary>
    public IReadOnlyList<double> DaysLater => [.. Pairs
        .Select(pair => pair.With.Summary.Dates.TargetSugar?.DayNumber - pair.Without.Summary.Dates.TargetSugar?.DayNumber)
        .OfType<int>().Select(days => (double)days).Order()];

    /// <summary>Yield with it over that without it.</summary>
    public IReadOnlyList<double> Yield => Ratios(season => season.Summary.Harvest?.YieldKgPerVine);

    /// <summary>The same of the sugar that the leaves could send to each kilogram of fruit in a day of ripening.</summary>
    public IReadOnlyList<double> RipeningCapacity => Ratios(season => season.Summary.RipeningCapacityGPerKgD);

    private List<double> Ratios(Func<AheadSeason, double?> value) => [.. Pairs
        .Select(pair => value(pair.With) / value(pair.Without)).OfType<double>().Where(double.IsFinite).Order()];
}

/// <summary>Where the vine stands and what is coming, as an ensemble of vines that agree with what was seen.</summary>
public sealed record VineForecast
{
    // Steps of the fit where a season up to the last note costs little.
    private const int StepsWhereCheap = 2;

    // Seasons to so many days after their first month are short and of small canopies.
    private const int CheapDays = 90;

    /// <summary>The day from which it looks ahead.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The last day of weather that was recorded or foretold; later days are made.</summary>
    public required DateOnly WeatherTo { get; init; }

    public required FittedVines Fit { get; init; }

    /// <summary>The members' seasons.</summary>
    public required IReadOnlyList<AheadSeason> Seasons { get; init; }

    public required IReadOnlyList<OptionAhead> Options { get; init; }

    /// <summary>Number of the member whose fruit is ripe in the middle of all.</summary>
    public required int Middle { get; init; }

    /// <summary>That member's block, and its vine as it stands on the day.</summary>
    public required (Scenario Scenario, SeasonResult Season) Standing { get; init; }

    /// <summary>Standard deviation of what was added to the temperatures of each season ahead [K].</summary>
    public required double SpreadBetweenSeasons { get; init; }

    /// <summary>Growing seasons in the record that the weather ahead is made of.</summary>
    public required int SeasonsOfRecord { get; init; }

    public StageRange Bloom => Range(dates => dates.Bloom);

    public StageRange Veraison => Range(dates => dates.Veraison);

    public StageRange TargetSugar => Range(dates => dates.TargetSugar);

    /// <summary>Leaf area at veraison of the members that reach it, from the least [m² a vine].</summary>
    public IReadOnlyList<double> LeafAreaAtVeraison =>
        [.. Seasons.Select(season => season.YoungLeaf?.WholeArea).OfType<double>().Order()];

    private StageRange Range(Func<StageDates, DateOnly?> stage) =>
        StageRange.Of([.. Seasons.Select(season => stage(season.Summary.Dates))]);

    /// <summary>Share of the members whose fruit has the target sugar by a day [0 to 1].</summary>
    public double ChanceBy(DateOnly day) =>
        Seasons.Count(season => season.Summary.Dates.TargetSugar <= day) / (double)Seasons.Count;

    /// <summary>Makes a forecast.</summary>
    /// <param name="scenario">The block, with the work and water that was given and what is planned.</param>
    /// <param name="known">Weather that was recorded and, after the day, the outlook.</param>
    /// <param name="weather">Weather of the members, which begins with the known.</param>
    /// <param name="utcOffsetHours">Local standard time less UTC [h].</param>
    /// <param name="asOf">The day from which it looks ahead; nothing was seen after it.</param>
    /// <param name="observations">What was seen.</param>
    /// <param name="options">How.</param>
    public static VineForecast Make(
        Scenario scenario, WeatherSeries known, WeatherAhead weather, double utcOffsetHours, DateOnly asOf,
        IReadOnlyList<Observation> observations, ForecastOptions options)
    {
        var fitting = new FitOptions
        {
            Members = options.Members,
            Steps = IsCheap(scenario, observations) ? StepsWhereCheap : 1,
            Seed = options.Seed,
            Threads = options.Threads,
            Quality = options.Quality,
            IsChecked = IsCheap(scenario, observations),
            Cancellation = options.Cancellation,
        };
        var (done, all) = (0, VineFit.SeasonsOf(fitting, observations.Count) + options.Members);
        var fit = VineFit.Fit(scenario, known, utcOffsetHours, observations, fitting with { SeasonDone = Done });
        var running = new LookAheadOptions
        {
            Threads = options.Threads,
            Quality = options.Quality,
            Observations = observations,
            SeasonDone = Done,
            Cancellation = options.Cancellation,
        };
        var seasons = LookAhead.Run(scenario, [.. Enumerable.Range(0, options.Members)], fit.Traits, weather, utcOffsetHours, running);
        if (observations.Count > 0) fit = VineFit.WithShown(fit, [.. seasons.Select(season => season.Shown)]);
        var byRipeness = Enumerable.Range(0, seasons.Count)
            .OrderBy(member => seasons[member].Summary.Dates.TargetSugar ?? DateOnly.MaxValue)
            .ThenByDescending(member => seasons[member].Days.Count > 0 ? seasons[member].Days[^1].SugarBrix ?? 0 : 0).ToList();
        var middle = byRipeness[byRipeness.Count / 2];
        var forecast = new VineForecast
        {
            AsOf = asOf,
            WeatherTo = weather.KnownTo,
            Fit = fit,
            Seasons = seasons,
            Options = [],
            Middle = middle,
            Standing = LookAhead.Standing(
                scenario, fit.Traits[middle], known, utcOffsetHours, asOf, running with { Quality = options.StandingQuality, Observations = [] }),
            SpreadBetweenSeasons = weather.SpreadBetweenSeasons,
            SeasonsOfRecord = weather.SeasonsOfRecord,
        };
        if (options.MembersOfOption == 0) return forecast;
        var tried = Evenly(byRipeness, options.MembersOfOption);
        var possible = VineOption.After(scenario, asOf, forecast.Bloom.P50, forecast.Veraison.P50);
        all += tried.Count * possible.Count;
        return forecast with
        {
            Options = [.. possible.Select(option => Try(
                option, scenario, tried, forecast, weather, utcOffsetHours, running with { Observations = [] }))],
        };

        void Done() => options.Progress?.Invoke(Interlocked.Increment(ref done), all);
    }

    private static bool IsCheap(Scenario scenario, IReadOnlyList<Observation> observations)
    {
        if (observations.Count == 0) return true;
        var last = observations.Max(seen => seen.Date);
        return last < SeasonCalendar.InYear(scenario.Site, last.Year).RowsFrom.AddDays(CheapDays);
    }

    private static OptionAhead Try(
        VineOption option, Scenario scenario, IReadOnlyList<int> tried, VineForecast forecast, WeatherAhead weather,
        double utcOffsetHours, LookAheadOptions running)
    {
        try
        {
            var with = LookAhead.Run(
                option.Change(scenario), tried, [.. tried.Select(member => forecast.Fit.Traits[member])], weather, utcOffsetHours,
                running);
            return new OptionAhead(option, [.. tried.Select((member, i) => (forecast.Seasons[member], with[i]))]);
        }
        catch (SeasonInputException fault)
        {
            // It contradicts work that is planned already.
            return new OptionAhead(option, [], fault.Message);
        }
    }

    private static List<int> Evenly(List<int> members, int count) =>
        [.. Enumerable.Range(0, Math.Min(count, members.Count))
            .Select(i => members[(int)((i + 0.5) * members.Count / Math.Min(count, members.Count))])];
}
