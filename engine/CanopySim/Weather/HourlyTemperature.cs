using CanopySim.Sky;

namespace CanopySim.Weather;

/// <summary>
/// Hours of temperature from the day's extremes: a sine by day, an exponential fall by night. Parton &amp; Logan 1981,
/// Agricultural Meteorology 23:205-216 (the curves from memory), coefficients for air at 150 cm:
/// day T = Tn + (Tx − Tn) sin(π m / (Y + 2a)), m [h] after the minimum at sunrise + c, Y day length;
/// night T = Tn' + (Ts − Tn') exp(−b n / Z), n [h] after sunset, Z night length, Tn' the next minimum, Ts at sunset.
/// As published the night ends above Tn' by exp(−b) of the fall and jumps at sunrise; here it is stretched to reach Tn' at its
/// hour (as Goudriaan &amp; van Laar 1994 do), so that the curve is continuous, at midnight too.
/// </summary>
public static class HourlyTemperature
{
    /// <summary>a, lag of the maximum after noon [h].</summary>
    public const double MaximumLag = 1.86;

    /// <summary>b, decay over a night.</summary>
    public const double NightDecay = 2.20;

    /// <summary>c, lag of the minimum after sunrise [h].</summary>
    public const double MinimumLag = -0.17;

    /// <summary>A day's extremes [°C] and its sun.</summary>
    public readonly record struct Extremes(double Minimum, double Maximum, SolarDay Sun)
    {
        public double MinimumHour => Sun.SunriseHour + MinimumLag;

        public double MaximumHour => MinimumHour + Sun.DayLength / 2 + MaximumLag;

        /// <summary>Temperature [°C] between the minimum and sunset.</summary>
        public double ByDay(double hour) =>
            Minimum + (Maximum - Minimum) * Math.Sin(Math.PI * (hour - MinimumHour) / (Sun.DayLength + 2 * MaximumLag));
    }

    /// <summary>
    /// Temperature [°C] at an hour of a day (0 to 24), given the days before and after. Not yet held within the day's extremes:
    /// on its way to a much colder morning an evening may pass below them.
    /// </summary>
    public static double At(double hour, Extremes previous, Extremes day, Extremes next)
    {
        if (hour < day.MinimumHour)
        {
            var sunset = previous.Sun.SunsetHour - 24;
            if (hour < sunset) return previous.ByDay(hour + 24);
            return ByNight(hour, previous.ByDay(sunset + 24), sunset, day.Minimum, day.MinimumHour);
        }

        if (hour <= day.Sun.SunsetHour) return day.ByDay(hour);
        var end = next.MinimumHour + 24;
        return hour < end
            ? ByNight(hour, day.ByDay(day.Sun.SunsetHour), day.Sun.SunsetHour, next.Minimum, end)
            : next.ByDay(hour - 24);
    }

    /// <summary>
    /// The 24 hours of a day, each the temperature at mid-hour [°C], but the hours in which the extremes fall take just those;
    /// none lies outside the day's extremes, so that their least and greatest are the day's.
    /// </summary>
    public static double[] OfDay(Extremes previous, Extremes day, Extremes next)
    {
        var hours = new double[24];
        for (var hour = 0; hour < 24; hour++)
            hours[hour] = Math.Min(Math.Max(At(hour + 0.5, previous, day, next), day.Minimum), day.Maximum);
        hours[HourOfDay(day.MinimumHour)] = day.Minimum;
        hours[HourOfDay(day.MaximumHour)] = day.Maximum;
        return hours;
    }

    private static double ByNight(double hour, double fromTemperature, double from, double toTemperature, double to)
    {
        var remaining = Math.Exp(-NightDecay * (hour - from) / (to - from));
        var last = Math.Exp(-NightDecay);
        return toTemperature + (fromTemperature - toTemperature) * (remaining - last) / (1 - last);
    }

    private static int HourOfDay(double hour) => ((int)Math.Floor(hour) % 24 + 24) % 24;
}
