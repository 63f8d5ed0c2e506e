namespace CanopySim.Sky;

/// <summary>
/// The sun that stands for an hour: at mid-hour, or in the hours of sunrise and sunset at the middle of the part in which it is
/// up. Whoever splits an hour's light and whoever casts it must take this one, or direct + diffuse is not the global.
/// </summary>
/// <param name="Position">The sun; at mid-hour below the horizon when it is down.</param>
/// <param name="LitFraction">Share of the hour in which the sun is up, 0 to 1.</param>
public readonly record struct HourlySun(SolarPosition Position, double LitFraction)
{
    private const int Refinements = 6;

    public bool IsUp => LitFraction > 0;

    /// <summary>cos of the zenith angle; 0 when the sun is down.</summary>
    public double CosZenith => IsUp ? Position.CosZenith : 0;

    /// <summary>The sun of hour h (h:00 to h+1:00 local standard time, which is UTC + the offset).</summary>
    public static HourlySun At(DateOnly date, int hour, Site site, double utcOffsetHours)
    {
        var start = date.ToDateTime(TimeOnly.MinValue).AddHours(hour - utcOffsetHours);

        SolarPosition At(double hours) =>
            SolarPosition.At(start.AddHours(hours), site.Latitude, site.Longitude, site.Elevation);

        var (first, middle, last) = (At(0), At(0.5), At(1));
        var from = 0.0;
        var to = 1.0;
        if (!first.IsUp && !last.IsUp && !middle.IsUp) return new HourlySun(middle, 0);
        if (!first.IsUp) from = middle.IsUp ? Crossing(At, 0, 0.5) : Crossing(At, 0.5, 1);
        if (!last.IsUp) to = middle.IsUp ? Crossing(At, 0.5, 1) : Crossing(At, 0, 0.5);
        if (from == 0 && to == 1) return new HourlySun(middle, 1);

        // A lit part of less than a moment leaves the middle on the horizon: then the hour is dark.
        var position = At((from + to) / 2);
        if (position.IsUp && to > from) return new HourlySun(position, to - from);
        return new HourlySun(middle with { ZenithRadians = Math.Max(middle.ZenithRadians, Math.PI / 2) }, 0);
    }

    /// <summary>
    /// When the sun passes the horizon between two times of which one is lit [h]: false position, nearly linear.
    /// </summary>
    private static double Crossing(Func<double, SolarPosition> at, double low, double high)
    {
        var heightLow = at(low).CosZenith;
        var heightHigh = at(high).CosZenith;
        var crossing = low;
        for (var refinement = 0; refinement < Refinements; refinement++)
        {
            crossing = low + (high - low) * heightLow / (heightLow - heightHigh);
            var height = at(crossing).CosZenith;
            if (height == 0) break;
            if (height > 0 == heightLow > 0) (low, heightLow) = (crossing, height);
            else (high, heightHigh) = (crossing, height);
        }

        return crossing;
    }
}
