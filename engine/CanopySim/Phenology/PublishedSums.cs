using CanopySim.Weather;

namespace CanopySim.Phenology;

/// <summary>
/// Dates by the published sums of a cultivar: daily mean temperature above 0 °C, summed from day 60 of the year (242 in the
/// south): Parker et al. 2011, Aust J Grape Wine Res 17:206-216. They are printed beside the model's dates, nothing follows from them.
/// </summary>
public static class PublishedSums
{
    private const int StartDayNorth = 60;
    private const int StartDaySouth = 242;

    /// <summary>The day on which the sum [°C d] is reached in the season that begins in a year; null where the weather does not reach it or begins too late.</summary>
    public static DateOnly? DateOf(double sum, WeatherSeries weather, int year, bool southern)
    {
        var start = new DateOnly(year, 1, 1).AddDays((southern ? StartDaySouth : StartDayNorth) - 1);
        if (weather.Days.Count == 0 || weather.Days[0].Date > start) return null;
        var total = 0.0;
        foreach (var day in weather.Days)
        {
            if (day.Date < start) continue;
            total += Math.Max(0, day.MeanTemperatureCelsius);
            if (total >= sum) return day.Date < start.AddDays(365) ? day.Date : null;
        }

        return null;
    }
}
