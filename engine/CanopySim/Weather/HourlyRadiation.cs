using CanopySim.Sky;

namespace CanopySim.Weather;

/// <summary>
/// Which share of a day's radiation falls in an hour, from the hour angle of the sun at mid-hour and at sunset [rad].
/// </summary>
public static class HourlyRadiation
{
    /// <summary>
    /// Share of the day's global radiation in an hour: rt = (a + b cos ω) rd, a = 0.409 + 0.5016 sin(ωs − 60°),
    /// b = 0.6609 − 0.4767 sin(ωs − 60°). Collares-Pereira &amp; Rabl 1979, Solar Energy 22:155-164, from memory.
    /// </summary>
    public static double CollaresPereiraRabl(double hourAngle, double sunsetHourAngle)
    {
        var sine = Math.Sin(sunsetHourAngle - Math.PI / 3);
        return (0.409 + 0.5016 * sine + (0.6609 - 0.4767 * sine) * Math.Cos(hourAngle)) * LiuJordan(hourAngle, sunsetHourAngle);
    }

    /// <summary>
    /// Share of the day's diffuse (and extraterrestrial) radiation in an hour:
    /// rd = (π/24)(cos ω − cos ωs) / (sin ωs − ωs cos ωs). Liu &amp; Jordan 1960, Solar Energy 4(3):1-19. 0 when the sun is down.
    /// </summary>
    public static double LiuJordan(double hourAngle, double sunsetHourAngle)
    {
        if (Math.Abs(hourAngle) >= sunsetHourAngle) return 0;
        var height = Math.Cos(hourAngle) - Math.Cos(sunsetHourAngle);
        return Math.PI / 24 * height / (Math.Sin(sunsetHourAngle) - sunsetHourAngle * Math.Cos(sunsetHourAngle));
    }

    /// <summary>
    /// The hourly means [W m⁻²] of a day with a sum [MJ m⁻² d⁻¹], by <see cref="CollaresPereiraRabl"/> at each hour's sun, scaled
    /// so that the hours sum to the day (mid-hours alone miss it by up to 1 %). All 0 when the sun never rises.
    /// </summary>
    public static double[] OfDay(double dailySum, IReadOnlyList<HourlySun> suns, double latitudeDegrees)
    {
        var hours = new double[24];
        var sum = 0.0;
        for (var hour = 0; hour < 24; hour++)
        {
            if (!suns[hour].IsUp) continue;
            var position = suns[hour].Position;

            // Sunset by the hour's own declination, or a sun that has just risen would count as down.
            var sunset = SolarDay.HourAngleAt(0, latitudeDegrees, position.Declination(latitudeDegrees));
            hours[hour] = suns[hour].LitFraction * CollaresPereiraRabl(position.HourAngle(latitudeDegrees), sunset);
            sum += hours[hour];
        }

        if (sum <= 0) return hours;
        var wattsPerShare = dailySum * (1e6 / 3600) / sum;
        for (var hour = 0; hour < 24; hour++) hours[hour] *= wattsPerShare;
        return hours;
    }
}
