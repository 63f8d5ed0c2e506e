using CanopySim.Sky;
using Xunit;

namespace CanopySim.Tests.Sky;

public class HourlySunTests
{
    private static readonly Site Block = new() { Latitude = 46.2, Longitude = 6.1, Elevation = 400 };

    [Fact]
    public void Is_the_sun_of_mid_hour_by_day()
    {
        var sun = HourlySun.At(new DateOnly(2022, 7, 1), 10, Block, 1);
        var expected = SolarPosition.At(new DateTimeOffset(2022, 7, 1, 10, 30, 0, TimeSpan.FromHours(1)), 46.2, 6.1, 400);
        Assert.Equal(expected, sun.Position);
        Assert.Equal(1, sun.LitFraction);
    }

    [Fact]
    public void Is_the_middle_of_the_lit_part_at_sunrise_and_sunset()
    {
        var date = new DateOnly(2022, 7, 1);
        var day = SolarDay.At(date, Block, 1);
        foreach (var (hour, from, to) in new[]
        {
            ((int)day.SunriseHour, day.SunriseHour, Math.Floor(day.SunriseHour) + 1),
            ((int)day.SunsetHour, Math.Floor(day.SunsetHour), day.SunsetHour),
        })
        {
            var sun = HourlySun.At(date, hour, Block, 1);
            var middle = date.ToDateTime(TimeOnly.MinValue).AddHours((from + to) / 2 - 1);
            var expected = SolarPosition.At(new DateTimeOffset(middle, TimeSpan.Zero), 46.2, 6.1, 400);

            // A second of time, 0.004 deg: the sunrise of SolarDay is that of the Earth's center.
            Assert.Equal(to - from, sun.LitFraction, 2.0 / 3600);
            Assert.Equal(expected.ZenithDegrees, sun.Position.ZenithDegrees, 0.004);
        }
    }

    [Fact]
    public void Is_down_at_night()
    {
        var sun = HourlySun.At(new DateOnly(2022, 7, 1), 0, Block, 1);
        Assert.Equal((0.0, 0.0), (sun.LitFraction, sun.CosZenith));
        Assert.False(sun.Position.IsUp);
    }

    [Fact]
    public void Never_stands_below_the_horizon_while_lit()
    {
        for (var latitude = -66; latitude <= 66; latitude += 6)
        {
            var site = new Site { Latitude = latitude, Longitude = 17.3 };
            for (var day = 0; day < 365; day += 5)
                for (var hour = 0; hour < 24; hour++)
                {
                    var sun = HourlySun.At(new DateOnly(2023, 1, 1).AddDays(day), hour, site, 1);
                    Assert.InRange(sun.LitFraction, 0, 1);
                    Assert.Equal(sun.IsUp, sun.Position.IsUp);
                }
        }
    }
}
