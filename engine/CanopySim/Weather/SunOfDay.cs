using CanopySim.Sky;

namespace CanopySim.Weather;

/// <summary>The sun of a day and of each of its hours, worked out once.</summary>
internal readonly record struct SunOfDay(SolarDay Day, HourlySun[] Hours)
{
    public static SunOfDay At(DateOnly date, Site site, double utcOffsetHours)
    {
        var hours = new HourlySun[24];
        for (var hour = 0; hour < 24; hour++) hours[hour] = HourlySun.At(date, hour, site, utcOffsetHours);
        return new SunOfDay(SolarDay.At(date, site, utcOffsetHours), hours);
    }
}
