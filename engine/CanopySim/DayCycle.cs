using CanopySim.Weather;

namespace CanopySim;

/// <summary>
/// A day of the season, in order. Each day the weather adds thermal time, shoots grow, blades are placed along the trellis, sun
/// and sky are projected through that scene until every blade knows its light, each blade assimilates hour by hour at the
/// efficiency of its age, the vine pays for its respiration and growth, the fruit takes its share, and the day closes with
/// its carbon.
/// </summary>
public static class DayCycle
{
    public static void Run(Simulation season, WeatherDay weather)
    {
        season.AddThermalTime(weather);
        season.SufferFrost(weather);
        season.WorkInCanopy(weather.Date);
        season.GrowShoots(weather);
        season.AgeLeaves();
        season.PlaceBlades();
        season.ShineOnBlades(weather);
        season.Assimilate(weather);
        season.PayAndShareCarbon(weather);
        season.DrawWater(weather);
        season.CloseDay(weather);
    }
}
