using CanopySim.Weather;

namespace CanopySim.Tests.Weather;

/// <summary>
/// How far a record lies from generated years, in standard errors. Each statistic is taken year by year; its spread between years
/// says how far the mean of the record's few years may be from that of many generated ones by chance alone.
/// </summary>
internal static class WeatherLikeness
{
    public sealed record Distance(string Name, double Recorded, double Generated, double StandardErrors);

    private sealed record Day(DateOnly Date, DailyReading Reading);

    private static readonly (string Name, Func<DailyReading, double?> Of)[] Quantities =
    [
        ("maximum", day => day.MaximumTemperatureCelsius),
        ("minimum", day => day.MinimumTemperatureCelsius),
        ("radiation", day => day.GlobalRadiation),
        ("vapor pressure", day => day.VaporPressure),
        ("wind", day => day.WindSpeed),
    ];

    /// <summary>Means and standard deviations of each month, rain and wet days of each month, and correlations over all months.</summary>
    public static List<Distance> Between(WeatherRecord record, WeatherRecord generated)
    {
        var (recorded, made) = (Years(record), Years(generated));
        var distances = new List<Distance>();
        foreach (var (name, of) in Quantities.Where(quantity => quantity.Of(record.Days[0]) is not null))
        {
            distances.AddRange(Monthly($"mean {name}", days => days.Average(day => of(day.Reading)!.Value)));
            distances.AddRange(Monthly($"deviation of {name}", days => Deviation([.. days.Select(day => of(day.Reading)!.Value)])));
            distances.Add(Yearly($"{name} with its day before", days => Correlation(days[1..], days[..^1], of, of)));
            if (name != "maximum")
                distances.Add(Yearly($"{name} with maximum", days => Correlation(days, days, of, Quantities[0].Of)));
        }

        if (record.Days[0].Rain is not null)
        {
            distances.AddRange(Monthly("wet share", days => days.Average(day => IsWet(day) ? 1.0 : 0)));
            distances.AddRange(Monthly("mean rain", days => days.Average(day => day.Reading.Rain!.Value)));
            distances.Add(Compare("length of wet spells", [.. recorded.Select(WetSpell)], [.. made.Select(WetSpell)], recorded.Count > 1 ? Variance([.. recorded.Select(WetSpell)]) : 0));
        }

        return distances;

        IEnumerable<Distance> Monthly(string name, Func<Day[], double> statistic)
        {
            var recordedBy = Enumerable.Range(1, 12).Select(month => recorded.Select(year => statistic(Month(year, month))).ToArray()).ToArray();

            // Four years tell their spread badly in one month, better in twelve.
            var pooled = recorded.Count > 1 ? recordedBy.Average(Variance) : 0;
            for (var month = 1; month <= 12; month++)
                yield return Compare($"{name}, month {month}", recordedBy[month - 1], [.. made.Select(year => statistic(Month(year, month)))], pooled);
        }

        // Correlations of each month's days, so that the year's course is not taken for persistence.
        Distance Yearly(string name, Func<Day[], double> statistic)
        {
            double OfYear(Day[] year) => Enumerable.Range(1, 12).Average(month => statistic(Month(year, month)));
            double[] ofRecord = [.. recorded.Select(OfYear)];
            return Compare(name, ofRecord, [.. made.Select(OfYear)], recorded.Count > 1 ? Variance(ofRecord) : 0);
        }
    }

    public static double RootMeanSquare(IEnumerable<Distance> distances) =>
        Math.Sqrt(distances.Average(distance => distance.StandardErrors * distance.StandardErrors));

    private static Distance Compare(string name, double[] recorded, double[] made, double recordedVariance)
    {
        var error = Math.Sqrt(Math.Max(Variance(made), recordedVariance) / recorded.Length + Variance(made) / made.Length);
        var apart = recorded.Average() - made.Average();
        return new Distance(name, recorded.Average(), made.Average(), error > 0 ? apart / error : apart == 0 ? 0 : double.PositiveInfinity);
    }

    private static List<Day[]> Years(WeatherRecord record) =>
    [
        .. record.Days.Select((reading, index) => new Day(record.FirstDay.AddDays(index), reading))
            .GroupBy(day => day.Date.Year).Select(year => year.ToArray()).Where(year => year.Length >= 365),
    ];

    private static Day[] Month(Day[] year, int month) => [.. year.Where(day => day.Date.Month == month)];

    // Days of a year's wet spells, in the mean.
    private static double WetSpell(Day[] year) =>
        (double)year.Count(IsWet) / year.Zip(year[1..]).Count(pair => !IsWet(pair.First) && IsWet(pair.Second));

    private static bool IsWet(Day day) => day.Reading.Rain >= 0.1;

    private static double Variance(double[] values)
    {
        var mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1);
    }

    private static double Deviation(double[] values) => Math.Sqrt(Variance(values));

    private static double Correlation(Day[] ones, Day[] others, Func<DailyReading, double?> one, Func<DailyReading, double?> other)
    {
        double[] x = [.. ones.Select(day => one(day.Reading)!.Value)];
        double[] y = [.. others.Select(day => other(day.Reading)!.Value)];
        var (meanX, meanY) = (x.Average(), y.Average());
        var product = x.Zip(y).Sum(pair => (pair.First - meanX) * (pair.Second - meanY)) / (x.Length - 1);
        return product / (Deviation(x) * Deviation(y));
    }
}
