using CanopySim.Numerics;

namespace CanopySim.Fitting;

/// <summary>How a quantity is spread over the members on a day: tenths and quarters from below.</summary>
public readonly record struct FanDay(DateOnly Date, double P10, double P25, double P50, double P75, double P90);

/// <summary>When the members reach a stage.</summary>
/// <param name="P10">Day by which a tenth of them have reached it; null where fewer ever do.</param>
/// <param name="P50">The same for half of them.</param>
/// <param name="P90">The same for nine tenths.</param>
/// <param name="Chance">Share of the members that reach it before the season ends [0 to 1].</param>
public readonly record struct StageRange(DateOnly? P10, DateOnly? P50, DateOnly? P90, double Chance)
{
    /// <summary>The range of the members' days; null is a member that never reaches the stage.</summary>
    public static StageRange Of(IReadOnlyList<DateOnly?> days)
    {
        var sorted = days.Select(day => day?.DayNumber ?? double.PositiveInfinity).Order().ToList();
        return new StageRange(
            Day(sorted, 0.1), Day(sorted, 0.5), Day(sorted, 0.9), days.Count(day => day is not null) / (double)days.Count);
    }

    // What adding and subtracting may leave of a whole day.
    private const double Rounding = 1e-6;

    private static DateOnly? Day(List<double> sorted, double share)
    {
        var day = Quantile.Of(sorted, share);
        return double.IsInfinity(day) ? null : DateOnly.FromDayNumber((int)Math.Ceiling(day - Rounding));
    }
}

/// <summary>Spreads a quantity of the members over the days.</summary>
public static class Fan
{
    /// <summary>A fan over the days on which every member has the quantity.</summary>
    /// <param name="seasons">The members.</param>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day; members that ended before it keep their last value.</param>
    /// <param name="value">What a member has on a day; null where it does not exist yet.</param>
    public static IReadOnlyList<FanDay> Of(
        IReadOnlyList<AheadSeason> seasons, DateOnly from, DateOnly to, Func<AheadSeason, DateOnly, double?> value)
    {
        var fan = new List<FanDay>();
        for (var date = from; date <= to; date = date.AddDays(1))
        {
            var values = seasons.Select(season => value(season, date)).OfType<double>().Order().ToList();
            if (values.Count < seasons.Count) continue;
            fan.Add(new FanDay(
                date, Quantile.Of(values, 0.1), Quantile.Of(values, 0.25), Quantile.Of(values, 0.5), Quantile.Of(values, 0.75),
                Quantile.Of(values, 0.9)));
        }

        return fan;
    }
}
