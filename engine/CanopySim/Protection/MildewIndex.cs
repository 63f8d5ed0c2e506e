using CanopySim.Weather;

namespace CanopySim.Protection;

/// <summary>
/// Temperature index for powdery mildew after Gubler &amp; Thomas, as extension text prints its rules (University of
/// California Cooperative Extension in Western Farm Press; seen, secondary). It begins with three days in a row of at
/// least six continuous hours at 70 to 85 °F, 20 points each; a day without them before the third sends it back to 0.
/// From then on such a day adds 20, any other takes 10, and 95 °F takes 10 too; a day adds 20 or takes 10 at most, and
/// the index stays within 0 and 100. Days run from midnight to midnight, so a warm run through midnight counts by its
/// parts. Nothing is published on heat before it has begun: such days are judged by their hours alone.
/// </summary>
public static class MildewIndex
{
    /// <summary>Continuous favorable hours that make a favorable day [h].</summary>
    public const int HoursNeeded = 6;

    /// <summary>Lowest favorable temperature [°C]: 70 °F.</summary>
    public const double FavorableFromCelsius = (70 - 32) / 1.8;

    /// <summary>Highest favorable temperature [°C]: 85 °F.</summary>
    public const double FavorableToCelsius = (85 - 32) / 1.8;

    /// <summary>
    /// Heat that sets mildew back [°C]: 95 °F. Published is a quarter of an hour of it; an hour whose mean reaches it
    /// is taken for that.
    /// </summary>
    public const double HotFromCelsius = (95 - 32) / 1.8;

    private const int Gain = 20;
    private const int Loss = 10;
    private const int DaysToBegin = 3;
    private const int Most = 100;

    // Degrees of a file in whole °F come back from °C a hair off.
    private const double Slack = 1e-9;

    /// <summary>The index of each day of a run of days without gaps, from the first one, on which it stands at 0.</summary>
    /// <param name="days">Complete days in their order.</param>
    public static IReadOnlyList<MildewDay> Of(IEnumerable<WeatherDay> days)
    {
        var index = new List<MildewDay>();
        var (begun, points) = (false, 0);
        foreach (var day in days)
        {
            var favorable = LongestRun(day);
            var isFavorable = favorable >= HoursNeeded;
            var isHot = day.Hours.Any(hour => hour.AirTemperatureCelsius >= HotFromCelsius - Slack);
            points = begun ? Math.Clamp(points + Step(isFavorable, isHot), 0, Most) : isFavorable ? points + Gain : 0;
            begun = begun || points >= DaysToBegin * Gain;
            index.Add(new MildewDay(day.Date, favorable, isHot, begun, points));
        }

        return index;
    }

    private static int Step(bool isFavorable, bool isHot)
    {
        if (!isFavorable) return -Loss;
        return isHot ? Gain - Loss : Gain;
    }

    private static int LongestRun(WeatherDay day)
    {
        var (longest, run) = (0, 0);
        foreach (var hour in day.Hours)
        {
            var celsius = hour.AirTemperatureCelsius;
            run = celsius >= FavorableFromCelsius - Slack && celsius <= FavorableToCelsius + Slack ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
