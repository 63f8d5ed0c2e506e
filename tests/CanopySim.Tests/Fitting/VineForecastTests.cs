using CanopySim.Fitting;
using CanopySim.Tests.Seasons;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Fitting;

/// <summary>Forecasts of a short piece of row, whose truth is a vine of the same model.</summary>
public class VineForecastTests
{
    private static readonly DateOnly Day = new(2025, 5, 12);

    // So short a row is grown ten times in the time of one whole vine.
    private static readonly Scenario Block = SeasonCases.Small with
    {
        Rows = SeasonCases.Small.Rows with { VineSpacing = 0.5 },
        CanopyWork = SeasonCases.Small.CanopyWork with { ShootsPerMeter = 8 },
    };

    private static readonly WeatherSeries Year = SeasonCases.Northern(Block);
    private static readonly Lazy<VineForecast> WithNotes = new(() => Make(Seen(), threads: 2));

    [Fact]
    public void Threads_change_no_bit()
    {
        var other = Make(Seen(), threads: 1);
        Assert.Equal(Shown(WithNotes.Value), Shown(other));
        Assert.Equal(
            WithNotes.Value.Options.SelectMany(option => option.DaysLater.Concat(option.Yield)),
            other.Options.SelectMany(option => option.DaysLater.Concat(option.Yield)));
    }

    [Fact]
    public void Notes_draw_the_vines_together()
    {
        var without = Make([], threads: 2);
        Assert.Empty(without.Fit.Effects);
        Assert.InRange(Spread(WithNotes.Value) / Spread(without), 0, 0.6);
        Assert.All(WithNotes.Value.Fit.Effects, effect => Assert.True(effect.SpreadAfter < effect.SpreadBefore, $"{effect}"));
    }

    [Fact]
    public void Each_member_has_its_own_weather_from_the_next_day_on()
    {
        var ahead = Ahead();
        var (one, other) = (ahead.Of(0), ahead.Of(1));
        Assert.Equal(Day, ahead.KnownTo);
        Assert.All(Known().Days.Zip(one.Days), pair => Assert.Same(pair.First, pair.Second));
        Assert.Equal(Enumerable.Range(0, one.Days.Count).Select(one.Days[0].Date.AddDays), one.Days.Select(day => day.Date));
        Assert.NotEqual(Maxima(one), Maxima(other));
        Assert.Equal(Maxima(one), Maxima(ahead.Of(0)));
        Assert.Contains(EstimatedInput.GeneratedWeather, one.EstimatedInputs);

        static IEnumerable<double> Maxima(WeatherSeries series) => series.Days.Where(day => day.Date > Day).Select(day => day.MaximumTemperatureCelsius);
    }

    // The record of a warmed scenario is warm when it comes here.
    [Fact]
    public void Weather_ahead_is_not_warmed_a_second_time()
    {
        var warmed = Block with { Weather = Block.Weather with { SummerWarming = 5, RainFactor = 2 } };
        var ahead = new WeatherAhead(Known(), SeasonCases.Record, warmed, SeasonCases.UtcOffset, new DateOnly(2025, 10, 15), seed: 1);
        Assert.Equal(Ahead().Of(0).Days.SelectMany(day => day.Hours), ahead.Of(0).Days.SelectMany(day => day.Hours));
    }

    [Fact]
    public void Options_are_what_can_still_be_done()
    {
        var bloom = new DateOnly(2025, 5, 28);
        var veraison = new DateOnly(2025, 7, 28);
        Assert.Equal(
            ["shoot_thinning", "topping", "leaf_pulling", "cluster_thinning"],
            VineOption.After(Block, Day, bloom, veraison).Select(option => option.Name));
        Assert.Equal(
            ["topping", "leaf_pulling", "cluster_thinning"],
            VineOption.After(Block, new DateOnly(2025, 6, 30), bloom, veraison).Select(option => option.Name));
        Assert.Equal(
            ["cluster_thinning"], VineOption.After(Block, new DateOnly(2025, 8, 1), bloom, veraison).Select(option => option.Name));
        Assert.Empty(VineOption.After(Block, new DateOnly(2025, 8, 20), bloom, veraison));
        Assert.All(
            VineOption.After(Block, new DateOnly(2025, 6, 30), bloom, veraison), option => Assert.True(option.Day > new DateOnly(2025, 6, 30)));
    }

    [Fact]
    public void Fruit_that_is_taken_off_is_missing_at_harvest()
    {
        var thinned = WithNotes.Value.Options.Single(option => option.Option.Name == "cluster_thinning");
        Assert.Equal(3, thinned.Pairs.Count);
        Assert.All(thinned.Yield, ratio => Assert.InRange(ratio, 0.5, 0.95));
    }

    private static IEnumerable<object?> Shown(VineForecast forecast) => forecast.Seasons.SelectMany(season =>
        (IEnumerable<object?>)[season.Summary.Dates, season.Days[^1].SugarBrix, season.Days[^1].LeafAreaM2PerVine]);

    // Standard deviation of the members' shoot length on the day [cm].
    private static double Spread(VineForecast forecast)
    {
        var lengths = forecast.Seasons.Select(season => season.On(Day)!.ShootLengthCm).ToList();
        return Math.Sqrt(lengths.Average(length => Math.Pow(length - lengths.Average(), 2)));
    }

    private static VineForecast Make(IReadOnlyList<Observation> seen, int threads) => VineForecast.Make(
        Block, Known(), Ahead(), SeasonCases.UtcOffset, Day, seen,
        new ForecastOptions { Members = 16, MembersOfOption = 3, Threads = threads });

    private static WeatherSeries Known() => Year with { Days = [.. Year.Days.TakeWhile(day => day.Date <= Day)] };

    private static WeatherAhead Ahead() => new(
        Known(), SeasonCases.Record, Block, SeasonCases.UtcOffset, new DateOnly(2025, 10, 15), seed: 1);

    private static List<Observation> Seen()
    {
        var truth = SeasonCases.Run(Block, Day);
        return
        [
            new(Day, ObservedQuantity.Budbreak, truth.Summary.Dates.Budbreak!.Value.DayNumber, 1),
            new(Day, ObservedQuantity.ShootLength, truth.Days[^1].ShootLengthCm / 100, 0.03),
            new(Day, ObservedQuantity.Nodes, truth.Days[^1].NodesPerShoot, 0.5),
        ];
    }
}
