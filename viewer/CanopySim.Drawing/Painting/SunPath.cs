using System.Numerics;
using CanopySim.Sky;

namespace CanopySim.Drawing.Painting;

/// <summary>A place of the sun in its day.</summary>
/// <param name="Hour">Local standard time [h].</param>
/// <param name="Direction">Unit vector towards it, in the frame of the cell.</param>
public readonly record struct SunPathPoint(double Hour, Vector3 Direction);

/// <summary>Where the sun goes on a day, in the frame of a block.</summary>
public static class SunPath
{
    private const int PointsPerHour = 6;

    /// <summary>The sun at a time of day, up or not.</summary>
    /// <param name="scenario">The block.</param>
    /// <param name="utcOffsetHours">Local standard time less UTC [h].</param>
    /// <param name="date">The day.</param>
    /// <param name="hour">Local standard time [h].</param>
    public static Vector3 At(Scenario scenario, double utcOffsetHours, DateOnly date, double hour)
    {
        var utc = new DateTimeOffset(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero).AddHours(hour - utcOffsetHours);
        var sun = SolarPosition.At(utc, scenario.Site.Latitude, scenario.Site.Longitude, scenario.Site.Elevation);
        var (level, up) = Math.SinCos(sun.ZenithRadians);
        var (right, along) = Math.SinCos(sun.AzimuthRadians - (scenario.Rows.Azimuth * Math.PI / 180));
        return new Vector3((float)(level * right), (float)(level * along), (float)up);
    }

    /// <summary>The points at which it is up, six an hour, full hours among them.</summary>
    public static IReadOnlyList<SunPathPoint> Of(Scenario scenario, double utcOffsetHours, DateOnly date)
    {
        List<SunPathPoint> path = [];
        for (var i = 0; i <= 24 * PointsPerHour; i++)
        {
            var hour = (double)i / PointsPerHour;
            var direction = At(scenario, utcOffsetHours, date, hour);
            if (direction.Z > 0) path.Add(new SunPathPoint(hour, direction));
        }

        return path;
    }
}
