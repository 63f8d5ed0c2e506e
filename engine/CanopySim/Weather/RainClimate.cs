using CanopySim.Numerics;

namespace CanopySim.Weather;

/// <summary>
/// Wet and dry days as a first-order Markov chain, and the rain of a wet day as a mixture of two exponentials: Richardson 1981,
/// doi:10.1029/WR017i001p00182, with the mixture of Woolhiser &amp; Pegram 1979, J. Appl. Meteorol. 18:34-42 (from memory), whose
/// tail is heavier than a single one's. Chances and the mean amount are those of the days around a day of the year, the nearer
/// the more; the mixture's shape is one for the year.
/// </summary>
internal sealed class RainClimate
{
    /// <summary>Least rain of a wet day [mm]: common practice, no source.</summary>
    public const double WetDay = 0.1;

    private const int DaysOfYear = 366;

    // Days to either side: a month for the chances, which every day tells; more for amounts, which only wet days tell.
    private const int ChanceReach = 30;
    private const int AmountReach = 45;

    private readonly double[] _wetAfterDry;
    private readonly double[] _wetAfterWet;
    private readonly double[] _excess;
    private readonly ExponentialMixture _shape;

    private RainClimate(double[] wetAfterDry, double[] wetAfterWet, double[] excess, ExponentialMixture shape)
    {
        _wetAfterDry = wetAfterDry;
        _wetAfterWet = wetAfterWet;
        _excess = excess;
        _shape = shape;
    }

    /// <remarks>A day's rain that is a sum of hours may round below the least of its column.</remarks>
    public static bool IsWet(double rain) => rain >= WetDay - 1e-6;

    /// <param name="rain">Rain of each day [mm].</param>
    /// <param name="firstDay">Day of the first.</param>
    public static RainClimate Of(IReadOnlyList<double> rain, DateOnly firstDay)
    {
        int SlotOf(int day) => firstDay.AddDays(day).DayOfYear - 1;
        var days = Enumerable.Range(1, rain.Count - 1).ToList();
        var afterDry = days.Where(day => !IsWet(rain[day - 1])).Select(day => (SlotOf(day), IsWet(rain[day]) ? 1.0 : 0));
        var afterWet = days.Where(day => IsWet(rain[day - 1])).Select(day => (SlotOf(day), IsWet(rain[day]) ? 1.0 : 0));
        var wet = Enumerable.Range(0, rain.Count).Where(day => IsWet(rain[day])).ToList();
        var excess = Around(wet.Select(day => (SlotOf(day), Math.Max(rain[day] - WetDay, 0))), AmountReach);
        var relative = wet.Where(day => excess[SlotOf(day)] > 0).Select(day => Math.Max(rain[day] - WetDay, 0) / excess[SlotOf(day)]);
        return new RainClimate(
            Around(afterDry, ChanceReach), Around(afterWet, ChanceReach), excess, ExponentialMixture.Fit([.. relative]));
    }

    public bool NextIsWet(bool isWet, DateOnly date, ulong seed) =>
        SeededValue.Uniform(seed, "weather wet day", date.DayNumber) < (isWet ? _wetAfterWet : _wetAfterDry)[date.DayOfYear - 1];

    /// <summary>Rain of a wet day [mm].</summary>
    public double AmountOn(DateOnly date, ulong seed) => WetDay + _excess[date.DayOfYear - 1] * _shape.At(
        SeededValue.Uniform(seed, "weather kind of rain", date.DayNumber), SeededValue.Uniform(seed, "weather rain", date.DayNumber));

    /// <summary>For each day of the year the mean of what is known near it, weighted by nearness; of the whole year where nothing is.</summary>
    private static double[] Around(IEnumerable<(int Slot, double Value)> known, int reach)
    {
        var (counts, sums) = (new double[DaysOfYear], new double[DaysOfYear]);
        foreach (var (slot, value) in known)
        {
            counts[slot]++;
            sums[slot] += value;
        }

        var all = counts.Sum() > 0 ? sums.Sum() / counts.Sum() : 0;
        var means = new double[DaysOfYear];
        for (var slot = 0; slot < DaysOfYear; slot++)
        {
            var (weights, sum) = (0.0, 0.0);
            for (var offset = -reach; offset <= reach; offset++)
            {
                var near = (slot + offset + DaysOfYear) % DaysOfYear;
                var weight = 1 - Math.Abs(offset) / (reach + 1.0);
                weights += weight * counts[near];
                sum += weight * sums[near];
            }

            means[slot] = weights > 0 ? sum / weights : all;
        }

        return means;
    }
}
