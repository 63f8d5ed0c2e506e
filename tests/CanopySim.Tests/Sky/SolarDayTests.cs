using CanopySim.Sky;
using Xunit;

namespace CanopySim.Tests.Sky;

public class SolarDayTests
{
    // Reda & Andreas 2008, NREL/TP-560-34302, table A2.1: sunrise and sunset in UT at longitude 0, printed to 0.1 s. An algorithm
    // good to 0.001 deg turns that into 0.3 s at these latitudes.
    [Theory]
    [InlineData("1994-01-02", 35, "07:08:12.8", "16:59:55.9")]
    [InlineData("1996-07-05", -35, "07:08:15.4", "17:01:04.5")]
    [InlineData("2004-12-04", -35, "04:38:57.1", "19:02:02.5")]
    public void Agrees_with_the_reports_sunrise_and_sunset(string date, double latitude, string sunrise, string sunset)
    {
        var site = new Site { Latitude = latitude, Longitude = 0 };
        var day = SolarDay.At(DateOnly.Parse(date), site, 0, SolarDay.VisibleSunriseAltitude);
        Assert.Equal(TimeSpan.Parse(sunrise).TotalSeconds, day.SunriseHour * 3600, 0.3);
        Assert.Equal(TimeSpan.Parse(sunset).TotalSeconds, day.SunsetHour * 3600, 0.3);
    }

    // The same report, table A5.1: transit at 18:46:04.97 UT on 2003-10-17 at 105.1786 W.
    [Fact]
    public void Finds_noon()
    {
        var day = SolarDay.At(new DateOnly(2003, 10, 17), new Site { Latitude = 39.742476, Longitude = -105.1786 }, -7);
        Assert.Equal(new TimeSpan(0, 11, 46, 4, 970).TotalSeconds, day.NoonHour * 3600, 0.3);
    }

    [Fact]
    public void Knows_polar_days_and_nights()
    {
        var site = new Site { Latitude = 72, Longitude = 20 };
        Assert.Equal(24, SolarDay.At(new DateOnly(2021, 6, 21), site, 1).DayLength, 12);
        Assert.Equal(0, SolarDay.At(new DateOnly(2021, 12, 21), site, 1).DayLength, 12);
    }

    // The lit hours must add up to what the sunrises and sunsets leave of the date, in zones far from the sun's time too. The
    // hours see the sun from the ground: its parallax of 0.0024 deg moves a sunrise by up to 2 s at 60 deg.
    [Theory]
    [InlineData(0, 37.6, 2)]
    [InlineData(38.4, -122.4, -8)]
    [InlineData(-41.5, 173.9, 12)]
    [InlineData(60, 10, -6)]
    [InlineData(60, 10, 9)]
    public void Its_lit_hours_add_up_to_it(double latitude, double longitude, double offset)
    {
        var site = new Site { Latitude = latitude, Longitude = longitude };
        for (var date = new DateOnly(2024, 1, 1); date.Year == 2024; date = date.AddDays(13))
        {
            var expected = 0.0;
            for (var shift = -1; shift <= 1; shift++)
            {
                var day = SolarDay.At(date.AddDays(shift), site, offset);
                var (from, to) = (Math.Max(day.SunriseHour + 24 * shift, 0), Math.Min(day.SunsetHour + 24 * shift, 24));
                expected += Math.Max(to - from, 0);
            }

            var lit = Enumerable.Range(0, 24).Sum(hour => HourlySun.At(date, hour, site, offset).LitFraction);
            Assert.Equal(expected, lit, 4.0 / 3600);
        }
    }
}
