namespace CanopySim.Weather;

/// <summary>
/// A quantity through the year: mean and variance by <see cref="SeasonalCurve"/>, and how its residuals are spread on dry and on
/// wet days.
/// </summary>
internal sealed class AirQuantityClimate
{
    // Springs and autumns are not each other's mirror, in mean or in spread.
    private const int Harmonics = 2;

    // A variance is positive also where its harmonics pass below 0; share of the year's mean variance, assumed.
    private const double LeastVarianceShare = 0.1;

    private const int FewestDaysToDiffer = 30;

    private const double LeastWind = 0.05;
    private const double LeastMoisture = 0.01;

    private readonly SeasonalCurve _mean;
    private readonly SeasonalCurve _variance;
    private readonly double _leastVariance;
    private readonly NormalScores _dry;
    private readonly NormalScores _wet;
    private readonly double _least;
    private readonly double _largest;

    public AirQuantityClimate(AirQuantity quantity, IReadOnlyList<SeasonalDay> days, IReadOnlyList<double> values)
    {
        var wetCount = days.Count(day => day.IsWet);
        var wetDiffers = Math.Min(wetCount, days.Count - wetCount) >= FewestDaysToDiffer;
        Quantity = quantity;
        (_least, _largest) = Limits(quantity, values.Min(), values.Max());
        _mean = SeasonalCurve.Fit(days, values, Harmonics, wetDiffers ? RainTerms.TodayAndYesterday : RainTerms.None);
        double[] squares = [.. values.Select((value, day) => Math.Pow(value - _mean.At(days[day]), 2))];
        _variance = SeasonalCurve.Fit(days, squares, Harmonics, wetDiffers ? RainTerms.Today : RainTerms.None);
        _leastVariance = Math.Max(LeastVarianceShare * squares.Average(), 1e-12);

        double[] residuals = [.. values.Select((value, day) => (value - _mean.At(days[day])) / Deviation(days[day]))];
        if (!wetDiffers)
        {
            (_dry, Scores) = (new NormalScores(residuals), NormalScores.Of(residuals));
            _wet = _dry;
            return;
        }

        Scores = new double[residuals.Length];
        _dry = Spread(isWet: false);
        _wet = Spread(isWet: true);

        NormalScores Spread(bool isWet)
        {
            int[] indices = [.. Enumerable.Range(0, days.Count).Where(day => days[day].IsWet == isWet)];
            double[] chosen = [.. indices.Select(index => residuals[index])];
            var scores = NormalScores.Of(chosen);
            for (var i = 0; i < indices.Length; i++) Scores[indices[i]] = scores[i];
            return new NormalScores(chosen);
        }
    }

    public AirQuantity Quantity { get; }

    /// <summary>The record's days as normal scores of their residuals.</summary>
    public double[] Scores { get; }

    public double At(SeasonalDay day, double score) =>
        Math.Clamp(_mean.At(day) + Deviation(day) * (day.IsWet ? _wet : _dry).ResidualAt(score), _least, _largest);

    // What is a share stays within its record's; a record's calm and bone-dry days would be 0, which no day ever is.
    private static (double Least, double Largest) Limits(AirQuantity quantity, double least, double largest) => quantity switch
    {
        AirQuantity.Clearness => (Math.Clamp(least, 0, 1), Math.Clamp(largest, 0, 1)),
        AirQuantity.Moisture => (Math.Clamp(least, LeastMoisture, 1), Math.Clamp(largest, LeastMoisture, 1)),
        AirQuantity.Wind => (LeastWind, double.PositiveInfinity),
        _ => (double.NegativeInfinity, double.PositiveInfinity),
    };

    private double Deviation(SeasonalDay day) => Math.Sqrt(Math.Max(_variance.At(day), _leastVariance));
}
