namespace CanopySim.Weather;

/// <summary>A day as the curves of a year see it: its place in the year [rad], and whether it was wet.</summary>
internal readonly record struct SeasonalDay(double Phase, bool IsWet)
{
    public static SeasonalDay Of(DateOnly date, bool isWet)
    {
        var daysOfYear = DateTime.IsLeapYear(date.Year) ? 366 : 365;
        return new SeasonalDay(2 * Math.PI * (date.DayOfYear - 0.5) / daysOfYear, isWet);
    }
}

/// <summary>
/// A mean that goes through the year in harmonics, with another level and first harmonic on wet days where they differ:
/// y = a0 + Σ (ak cos kθ + bk sin kθ) + wet (c0 + c1 cos θ + d1 sin θ), by least squares. Richardson 1981,
/// doi:10.1029/WR017i001p00182, fits wet and dry days apart; in one fit a dry summer's few wet days cannot bend a curve of their own.
/// </summary>
internal sealed class SeasonalCurve
{
    private readonly int _harmonics;
    private readonly double[] _coefficients;

    private SeasonalCurve(int harmonics, double[] coefficients)
    {
        _harmonics = harmonics;
        _coefficients = coefficients;
    }

    public static SeasonalCurve Fit(IReadOnlyList<SeasonalDay> days, IReadOnlyList<double> values, int harmonics, bool wetDiffers)
    {
        var size = 1 + 2 * harmonics + (wetDiffers ? 3 : 0);
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
        var wet = terms[(1 + 2 * harmonics)..];
        for (var term = 0; term < wet.Length; term++) wet[term] = day.IsWet ? terms[term] : 0;
    }
}
