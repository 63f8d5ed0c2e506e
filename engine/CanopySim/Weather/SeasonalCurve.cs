namespace CanopySim.Weather;

/// <summary>A day as the curves of a year see it: its place in the year [rad], and whether it and the day before were wet.</summary>
internal readonly record struct SeasonalDay(double Phase, bool IsWet, bool WasWet)
{
    public static SeasonalDay Of(DateOnly date, bool isWet, bool wasWet)
    {
        var daysOfYear = DateTime.IsLeapYear(date.Year) ? 366 : 365;
        return new SeasonalDay(2 * Math.PI * (date.DayOfYear - 0.5) / daysOfYear, isWet, wasWet);
    }
}

/// <summary>What besides the time of the year moves a <see cref="SeasonalCurve"/>; each adds a level and a first harmonic.</summary>
internal enum RainTerms
{
    None = 0,
    Today = 1,
    TodayAndYesterday = 2,
}

/// <summary>
/// A mean that goes through the year in harmonics, with other levels and first harmonics on wet days and on days after wet ones:
/// y = a0 + Σ (ak cos kθ + bk sin kθ) + w(t) (c0 + c1 cos θ + c2 sin θ) + w(t−1) (d0 + d1 cos θ + d2 sin θ), by least squares.
/// Richardson 1981, doi:10.1029/WR017i001p00182, fits wet and dry days apart; in one fit a dry summer's few wet days cannot bend
/// a curve of their own. The day before is added: rain's coolness lasts, and without it temperatures persist too little.
/// </summary>
internal sealed class SeasonalCurve
{
    private const int TermsOfRain = 3;

    private readonly int _harmonics;
    private readonly double[] _coefficients;

    private SeasonalCurve(int harmonics, double[] coefficients)
    {
        _harmonics = harmonics;
        _coefficients = coefficients;
    }

    public static SeasonalCurve Fit(IReadOnlyList<SeasonalDay> days, IReadOnlyList<double> values, int harmonics, RainTerms rain)
    {
        var size = 1 + 2 * harmonics + TermsOfRain * (int)rain;
        var (products, right, terms) = (new double[size, size], new double[size], new double[size]);
        for (var day = 0; day < days.Count; day++)
        {
            Terms(days[day], harmonics, terms);
            for (var row = 0; row < size; row++)
            {
                right[row] += terms[row] * values[day];
                for (var column = 0; column <= row; column++) products[row, column] += terms[row] * terms[column];
            }
        }

        return new SeasonalCurve(harmonics, SmallMatrix.Solve(SmallMatrix.Root(products), right));
    }

    public double At(SeasonalDay day)
    {
        Span<double> terms = stackalloc double[_coefficients.Length];
        Terms(day, _harmonics, terms);
        var sum = 0.0;
        for (var term = 0; term < terms.Length; term++) sum += terms[term] * _coefficients[term];
        return sum;
    }

    private static void Terms(SeasonalDay day, int harmonics, Span<double> terms)
    {
        terms[0] = 1;
        for (var harmonic = 1; harmonic <= harmonics; harmonic++)
            (terms[2 * harmonic], terms[2 * harmonic - 1]) = Math.SinCos(harmonic * day.Phase);
        var first = 1 + 2 * harmonics;
        for (var term = first; term < terms.Length; term++)
        {
            var wet = term < first + TermsOfRain ? day.IsWet : day.WasWet;
            terms[term] = wet ? terms[(term - first) % TermsOfRain] : 0;
        }
    }
}
