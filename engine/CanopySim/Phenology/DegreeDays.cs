namespace CanopySim.Phenology;

/// <summary>
/// Degree days of a day [°C d] from its extremes [°C] above a lower threshold, by the three methods in common use. Sums of
/// different methods must not be compared. An upper cutoff is horizontal: what lies above it counts as the cutoff,
/// DD(lower) − DD(upper).
/// </summary>
public static class DegreeDays
{
    /// <summary>
    /// max(0, (Tmax + Tmin)/2 − L): the index of Amerine &amp; Winkler 1944, Hilgardia 15:493-675; McMaster &amp; Wilhelm 1997
    /// (Agric Forest Meteorol 87:291-300), method 1.
    /// </summary>
    public static double Average(double minimumCelsius, double maximumCelsius, double lowerCelsius, double? upperCelsius = null) =>
        Above(lowerCelsius, upperCelsius, threshold => Math.Max(0, (minimumCelsius + maximumCelsius) / 2 - threshold));

    /// <summary>
    /// Area above the threshold under a triangle from minimum to maximum and back: (Tmax − L)² / (2 (Tmax − Tmin)) where the
    /// threshold lies between. Sevacherian, Stern &amp; Mueller 1977, J Econ Entomol 70:399-402.
    /// </summary>
    public static double SingleTriangle(
        double minimumCelsius, double maximumCelsius, double lowerCelsius, double? upperCelsius = null) =>
        Above(lowerCelsius, upperCelsius, threshold =>
        {
            if (threshold <= minimumCelsius) return (minimumCelsius + maximumCelsius) / 2 - threshold;
            if (threshold >= maximumCelsius) return 0;
            var over = maximumCelsius - threshold;
            return over * over / (2 * (maximumCelsius - minimumCelsius));
        });

    /// <summary>
    /// Area above the threshold under a sine from minimum to maximum and back: [(M − L)(π/2 − θ) + W cos θ] / π,
    /// θ = asin((L − M)/W), M the mean of the extremes, W half their range. Baskerville &amp; Emin 1969, Ecology 50:514-517; Allen 1976,
    /// Environ Entomol 5:388-396.
    /// </summary>
    public static double SingleSine(
        double minimumCelsius, double maximumCelsius, double lowerCelsius, double? upperCelsius = null) =>
        Above(lowerCelsius, upperCelsius, threshold =>
        {
            var mean = (minimumCelsius + maximumCelsius) / 2;
            if (threshold <= minimumCelsius) return mean - threshold;
            if (threshold >= maximumCelsius) return 0;
            var half = (maximumCelsius - minimumCelsius) / 2;
            var theta = Math.Asin((threshold - mean) / half);
            return ((mean - threshold) * (Math.PI / 2 - theta) + half * Math.Cos(theta)) / Math.PI;
        });

    private static double Above(double lower, double? upper, Func<double, double> degreeDaysAbove) =>
        degreeDaysAbove(lower) - (upper is { } cutoff ? degreeDaysAbove(cutoff) : 0);
}
