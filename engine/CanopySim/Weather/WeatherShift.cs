namespace CanopySim.Weather;

/// <summary>
/// A record as it would be in a warmer, cooler, wetter or drier year: each reading moved by what was asked, nothing else of it
/// (the delta change method, Hay, Wilby &amp; Leavesley 2000, J. Am. Water Resour. Assoc. 36:387-397, from memory). Relative humidity stays, so
/// that vapor pressure rises with saturation, which Held &amp; Soden 2006, doi:10.1175/JCLI3990.1, give as what to expect; light, wind and
/// which days are wet stay too. Carbon dioxide is the scenario's.
/// </summary>
public static class WeatherShift
{
    /// <summary>The record moved as the options ask; itself where they ask nothing.</summary>
    public static WeatherRecord Apply(WeatherRecord record, WeatherOptions options, Site site)
    {
        double[] warming = [.. Enumerable.Range(1, 12).Select(month => WarmingOf(month, options, site.Latitude < 0))];
        if (options.RainFactor == 1 && warming.All(each => each == 0)) return record;
        double On(int day) => warming[record.FirstDay.AddDays(day).Month - 1];
        return record with
        {
            Days = [.. record.Days.Select((reading, day) => Moved(reading, On(day), options.RainFactor))],
            Hours = [.. record.Hours.Select((reading, hour) => Moved(reading, On(hour / 24), options.RainFactor))],
            IsShifted = true,
        };
    }

    private static double WarmingOf(int month, WeatherOptions options, bool isSouthern) => options.Warming + (SeasonOf(month, isSouthern) switch
    {
        0 => options.WinterWarming,
        1 => options.SpringWarming,
        2 => options.SummerWarming,
        _ => options.AutumnWarming,
    });

    // Seasons of three whole months, from winter on.
    private static int SeasonOf(int month, bool isSouthern) => ((month % 12 / 3) + (isSouthern ? 2 : 0)) % 4;

    // A day's vapor pressure is held against its maximum, as the generator does.
    private static DailyReading Moved(DailyReading day, double warming, double rainFactor) => day with
    {
        MinimumTemperatureCelsius = day.MinimumTemperatureCelsius + warming,
        MaximumTemperatureCelsius = day.MaximumTemperatureCelsius + warming,
        VaporPressure = day.VaporPressure * Moistening(day.MaximumTemperatureCelsius, warming),
        Rain = day.Rain * rainFactor,
    };

    private static HourlyReading Moved(HourlyReading hour, double warming, double rainFactor) => hour with
    {
        AirTemperatureCelsius = hour.AirTemperatureCelsius + warming,
        VaporPressure = hour.VaporPressure * Moistening(hour.AirTemperatureCelsius, warming),
        Rain = hour.Rain * rainFactor,
    };

    private static double Moistening(double temperature, double warming) =>
        warming == 0 ? 1 : SaturationVaporPressure.At(temperature + warming) / SaturationVaporPressure.At(temperature);
}
