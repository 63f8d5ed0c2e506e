using CanopySim.Weather;
using Xunit;

namespace CanopySim.Files.Tests.Weather;

public sealed class EpwWeatherTest
{
    private static readonly Site Southern = new() { Latitude = -34, Longitude = 138.6, TimeZone = "UTC+09:30" };

    [Fact]
    public void ReadsADay()
    {
        var text = TestWeather.EpwHeader + string.Concat(Enumerable.Range(1, 24).Select(hour => TestWeather.EpwRow(2014, 4, 1, hour, hour, 1, 3, 0)));
        var record = TestWeather.Read(text, name: "place.epw");
        Assert.Equal((new DateOnly(2014, 4, 1), 24), (record.FirstDay, record.Hours.Count));
        // Hour 1 runs from 0:00 to 1:00; pressure in Pa; radiation in Wh/m² over the hour.
        Assert.Equal(new HourlyReading(1, SaturationVaporPressure.At(1), 10, 3, 5, 0, 3, 101.325), record.Hours[0]);
    }

    [Fact]
    public void AColumnOfMissingValuesIsNoColumn()
    {
        var text = TestWeather.EpwHeader + string.Concat(Enumerable.Range(1, 24).Select(hour => TestWeather.EpwRow(2014, 4, 1, hour)));
        Assert.All(TestWeather.Read(text).Hours, hour => Assert.Null(hour.Rain));
    }

    [Fact]
    public void FillsAMissingValueOnRequest()
    {
        var text = TestWeather.EpwHeader + string.Concat(Enumerable.Range(1, 24).Select(hour => TestWeather.EpwRow(2014, 4, 1, hour, hour == 5 ? double.NaN : hour, 0)));
        var record = TestWeather.Read(text, new WeatherOptions { File = "weather.csv", FillGaps = true });
        Assert.Equal((5, 1), (record.Hours[4].AirTemperatureCelsius, record.FilledGaps));
    }

    [Theory]
    [InlineData(2015, 8760, 0)]
    [InlineData(2016, 8784, 24)]
    [InlineData(null, 8760, 0)]
    public void ATypicalYearIsTakenForTheSeasons(int? year, int hours, int filled)
    {
        var record = TestWeather.Read(TestWeather.EpwYear(month => 1995 + month), year: year);
        Assert.Equal(new DateOnly(year ?? 1996, 1, 1), record.FirstDay);
        // 1996, the first row's year, is a leap year too.
        if (year is null) (hours, filled) = (8784, 24);
        Assert.Equal((hours, filled), (record.Hours.Count, record.FilledGaps));
        // 1 March has the temperature of March whether or not a day was put before it.
        var march = record.Hours[(hours == 8784 ? 60 : 59) * 24];
        Assert.Equal(3.01, march.AirTemperatureCelsius);
    }

    [Fact]
    public void YearsThatRunOnAreKept()
    {
        var text = TestWeather.EpwYear(_ => 2015);
        Assert.Equal(new DateOnly(2015, 1, 1), TestWeather.Read(text, year: 2020).FirstDay);
    }

    [Fact]
    public void SouthOfTheEquatorATypicalYearComesTwice()
    {
        var text = TestWeather.EpwYear(month => 1995 + month).Replace("47.6,-122.3,-8.0", "-34.0,138.6,9.5");
        var record = TestWeather.Read(text, site: Southern, year: 2014);
        Assert.Equal((new DateOnly(2014, 1, 1), 730), (record.FirstDay, record.DayCount));
    }
}
