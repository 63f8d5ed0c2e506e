using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Weather;

public class WeatherGeneratorTests(ITestOutputHelper output)
{
    private const int GeneratedYears = 60;

    private static readonly DateOnly FirstDay = new(2001, 1, 1);

    private static WeatherRecord Generate(WeatherRecord record, Site site, ulong seed, int years = GeneratedYears) =>
        WeatherGenerator.Generate(WeatherClimate.Of(record, site), seed, FirstDay, FirstDay.AddYears(years).DayNumber - FirstDay.DayNumber);

    private static (WeatherRecord Record, Site Site) Case(bool measured) => measured
        ? (RecordedWeather.Measured, RecordedWeather.MeasuredSite)
        : (RecordedWeather.Invented, RecordedWeather.InventedSite);

    /// <summary>
    /// Were the record some more generated years, its distances would be standard normal; the generator is fitted to it, so they
    /// should be smaller. Four of them is what chance gives to one in 16 000.
    /// </summary>
    [Theory]
    [InlineData(false, 1)]
    [InlineData(false, 2)]
    [InlineData(true, 1)]
    [InlineData(true, 2)]
    public void Generated_years_are_like_the_record(bool measured, ulong seed)
    {
        var (record, site) = Case(measured);
        var distances = WeatherLikeness.Between(record, Generate(record, site, seed));
        output.WriteLine($"{distances.Count} statistics, root mean square {WeatherLikeness.RootMeanSquare(distances):0.00} standard errors");
        foreach (var distance in distances.OrderByDescending(distance => Math.Abs(distance.StandardErrors)).Take(25)) output.WriteLine(distance.ToString());
        Assert.All(distances, distance => Assert.True(Math.Abs(distance.StandardErrors) < 4, distance.ToString()));
        Assert.InRange(WeatherLikeness.RootMeanSquare(distances), 0, 1.2);
    }
}
