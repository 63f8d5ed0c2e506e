using CanopySim.Sky;

namespace CanopySim.Weather;

/// <summary>
/// Makes complete hours of what a file gave: days become hours, then every gap in an hour is estimated and named. Hours are local
/// standard time; direct and diffuse belong to the sun of <see cref="HourlySun"/>.
/// </summary>
public static class WeatherBuilder
{
    /// <summary>The weather of a site whose local standard time is UTC + <paramref name="utcOffsetHours"/>.</summary>
    public static WeatherSeries Complete(WeatherRecord record, WeatherOptions options, Site site, double utcOffsetHours)
    {
        var estimated = new HashSet<string>();
        if (record.IsGenerated) estimated.Add(EstimatedInput.GeneratedWeather);
        if (record.IsShifted) estimated.Add(EstimatedInput.ShiftedWeather);
        var suns = new SunOfDay[record.DayCount];
        for (var index = 0; index < suns.Length; index++)
            suns[index] = SunOfDay.At(record.FirstDay.AddDays(index), site, utcOffsetHours);

        var days = new WeatherDay[record.DayCount];
        for (var index = 0; index < days.Length; index++)
        {
            var date = record.FirstDay.AddDays(index);
            var readings = record.Days.Count > 0
                ? DailyToHourly.Readings(record.Days, suns, index, site, estimated)
                : record.Hours.Skip(24 * index).Take(24).ToArray();
            days[index] = new WeatherDay
            {
                Date = date,
                Hours = CompleteHours(readings, date, suns[index], options, site, estimated),
            };
        }

        return new WeatherSeries { Days = days, EstimatedInputs = [.. EstimatedInput.All.Where(estimated.Contains)], FilledGaps = record.FilledGaps };
    }

    private static WeatherHour[] CompleteHours(
        HourlyReading[] readings, DateOnly date, SunOfDay sun, WeatherOptions options, Site site, HashSet<string> estimated)
    {
        var minimum = readings.Min(reading => reading.AirTemperatureCelsius);
        var maximum = readings.Max(reading => reading.AirTemperatureCelsius);
        double[]? estimatedRadiation = null;

        double EstimatedGlobal(int hour)
        {
            estimated.Add(EstimatedInput.GlobalRadiation);
            estimated.Add(EstimatedInput.HourlyRadiation);
            estimatedRadiation ??= HourlyRadiation.OfDay(
                RadiationFromTemperature.Daily(
                    minimum, maximum, options.RadiationFromTemperature, site.Latitude, site.Elevation, date.DayOfYear),
                sun.Hours, site.Latitude);
            return estimatedRadiation[hour];
        }

        double OrEstimate(double? measured, string name, double estimate)
        {
            if (measured is { } value) return value;
            estimated.Add(name);
            return estimate;
        }

        var hours = new WeatherHour[24];
        for (var hour = 0; hour < 24; hour++)
        {
            var reading = readings[hour];
            var light = Light(reading, sun.Hours[hour], () => EstimatedGlobal(hour), estimated);
            var vaporPressure = OrEstimate(
                reading.VaporPressure, EstimatedInput.VaporPressure, AirState.VaporPressureFromMinimum(minimum));
            var wind = reading.WindSpeed is { } speed ? AirState.WindAtTwoMeters(speed, site.WindHeight) : (double?)null;
            hours[hour] = new WeatherHour(
                reading.AirTemperatureCelsius,
                Math.Min(vaporPressure, SaturationVaporPressure.At(reading.AirTemperatureCelsius)),
                OrEstimate(reading.AirPressure, EstimatedInput.AirPressure, AirState.PressureAt(site.Elevation)),
                OrEstimate(wind, EstimatedInput.Wind, AirState.DefaultWindSpeed),
                OrEstimate(reading.Rain, EstimatedInput.Rain, 0),
                light.Global,
                light.DirectNormal,
                light.DiffuseHorizontal);
        }

        return hours;
    }

    /// <summary>
    /// An hour's light from what was measured of it. Where all three were, global and diffuse hold: both lie on the horizontal,
    /// while the direct one's cosine may belong to another clock.
    /// </summary>
    private static DirectAndDiffuse Light(
        HourlyReading reading, HourlySun sun, Func<double> estimatedGlobal, HashSet<string> estimated)
    {
        if (!sun.IsUp) return default;
        var (global, diffuse, direct) =
            (reading.GlobalHorizontalIrradiance, reading.DiffuseHorizontalIrradiance, reading.DirectNormalIrradiance);
        if (global is null && direct is { } directAlone && diffuse is { } diffuseAlone)
            return DirectAndDiffuse.FromDirectAndDiffuse(directAlone, diffuseAlone, sun);

        var total = global ?? estimatedGlobal();
        if (diffuse is { } measuredDiffuse) return DirectAndDiffuse.FromGlobalAndDiffuse(total, measuredDiffuse, sun);
        if (direct is { } measuredDirect) return DirectAndDiffuse.FromGlobalAndDirect(total, measuredDirect, sun);
        estimated.Add(EstimatedInput.DirectAndDiffuse);
        return DirectAndDiffuse.FromGlobal(total, sun);
    }
}
