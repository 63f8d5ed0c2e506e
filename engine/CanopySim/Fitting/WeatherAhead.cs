using CanopySim.Numerics;
using CanopySim.Weather;

namespace CanopySim.Fitting;

/// <summary>
/// The weather of each member of a forecast: what was recorded up to a day, then an outlook where there is one, then days
/// made like those of the site's record. The generator holds what goes from day to day; that whole seasons are warm
/// or cool is more than it makes, and the difference to the record is added as a warming of the member's own.
/// </summary>
public sealed class WeatherAhead
{
    /// <summary>Fewer growing seasons than these say little of how seasons differ; then the spread is assumed.</summary>
    public const int EnoughSeasons = 4;

    // [K].
    private const double AssumedSpread = 0.7;

    // Seasons that are made to see how much they differ by themselves.
    private const int TrialSeasons = 40;

    private const int GrowingDays = 183;

    private readonly WeatherSeries _known;
    private readonly WeatherClimate _climate;
    private readonly Scenario _scenario;
    private readonly double _utcOffsetHours;
    private readonly DateOnly _lastDay;
    private readonly ulong _seed;

    /// <param name="known">What was recorded and, after it, the outlook: without a gap, to its last day.</param>
    /// <param name="record">The site's record, nothing after the day of the forecast in it.</param>
    /// <param name="scenario">The block.</param>
    /// <param name="utcOffsetHours">Local standard time less UTC [h].</param>
    /// <param name="lastDay">To which day weather is made.</param>
    /// <param name="seed">Seed of the members' weather.</param>
    /// <exception cref="SeasonInputException">The record is shorter than a year.</exception>
    public WeatherAhead(
        WeatherSeries known, WeatherRecord record, Scenario scenario, double utcOffsetHours, DateOnly lastDay, ulong seed)
    {
        (_known, _scenario, _utcOffsetHours, _lastDay, _seed) = (known, scenario, utcOffsetHours, lastDay, seed);
        _climate = WeatherClimate.Of(record, scenario.Site);
        (SpreadBetweenSeasons, SeasonsOfRecord) = Spread(record, scenario.Site, seed);
    }

    /// <summary>Growing seasons that the record holds whole.</summary>
    public int SeasonsOfRecord { get; }

    /// <summary>Standard deviation of what is added to the temperatures of a member's season [K].</summary>
    public double SpreadBetweenSeasons { get; }

    /// <summary>The last day that is not made.</summary>
    public DateOnly KnownTo => _known.Days[^1].Date;

    /// <summary>The weather of a member, the same for the same seed.</summary>
    public WeatherSeries Of(int member)
    {
        var first = KnownTo.AddDays(1);
        var days = _lastDay.DayNumber - KnownTo.DayNumber;
        if (days <= 0) return _known;
        var made = WeatherGenerator.Generate(_climate, SeedOf(member), first, days);
        var warming = SpreadBetweenSeasons * SeededValue.Normal(_seed, "warmth of the season ahead", member);
        // What the scenario asks of its weather is in the record already.
        made = WeatherShift.Apply(made, new WeatherOptions { File = "", Warming = warming }, _scenario.Site);
        var ahead = WeatherBuilder.Complete(made, _scenario.Weather, _scenario.Site, _utcOffsetHours);
        return _known with
        {
            Days = [.. _known.Days, .. ahead.Days],
            EstimatedInputs = [.. EstimatedInput.All.Where(name =>
                _known.EstimatedInputs.Contains(name) || ahead.EstimatedInputs.Contains(name))],
        };
    }

    private ulong SeedOf(int member) => (ulong)(SeededValue.Uniform(_seed, "weather ahead", member) * ulong.MaxValue);

    private (double Spread, int Seasons) Spread(WeatherRecord record, Site site, ulong seed)
    {
        var firstMonth = site.IsSouthern ? 10 : 4;
        var days = DailyRecord.Of(record);
        var last = record.FirstDay.AddDays(days.Count - 1);
        var recorded = new List<double>();
        for (var year = record.FirstDay.Year; year <= last.Year; year++)
        {
            var first = new DateOnly(year, firstMonth, 1);
            var index = first.DayNumber - record.FirstDay.DayNumber;
            if (index >= 0 && index + GrowingDays <= days.Count) recorded.Add(MeanOf(days, index));
        }

        if (recorded.Count < EnoughSeasons) return (AssumedSpread, recorded.Count);
        var trials = Enumerable.Range(0, TrialSeasons).Select(trial => MeanOf(
            WeatherGenerator.Generate(_climate, SeedOf(-1 - trial), new DateOnly(2001, firstMonth, 1), GrowingDays).Days, 0));
        return (Math.Sqrt(Math.Max(0, Variance(recorded) - Variance([.. trials]))), recorded.Count);
    }

    private static double MeanOf(IReadOnlyList<DailyReading> days, int from)
    {
        var sum = 0.0;
        for (var day = from; day < from + GrowingDays; day++)
            sum += (days[day].MinimumTemperatureCelsius + days[day].MaximumTemperatureCelsius) / 2;
        return sum / GrowingDays;
    }

    private static double Variance(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1);
    }
}
