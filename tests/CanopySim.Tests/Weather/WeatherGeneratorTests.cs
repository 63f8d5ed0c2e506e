using CanopySim.Numerics;
using CanopySim.Sky;
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
    /// Were the record some more generated years, its distances would be standard normal, of root mean square 1; the generator is
    /// fitted to it, so they are smaller. Four of them is what chance gives to one in 16 000.
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
        output.WriteLine($"{distances.Count} statistics, root mean square {WeatherLikeness.RootMeanSquare(distances):0.00}, farthest {distances.MaxBy(distance => Math.Abs(distance.StandardErrors))}");
        Assert.All(distances, distance => Assert.True(Math.Abs(distance.StandardErrors) < 4, distance.ToString()));
        Assert.InRange(WeatherLikeness.RootMeanSquare(distances), 0, 1);
    }

    /// <summary>The comparison above would not pass other weather, nor the same days out of their order.</summary>
    [Fact]
    public void Other_weather_and_shuffled_days_are_found_unlike()
    {
        var record = RecordedWeather.Measured;
        var other = Generate(RecordedWeather.Invented, RecordedWeather.InventedSite, 1);
        Assert.True(WeatherLikeness.RootMeanSquare(WeatherLikeness.Between(record, other)) > 3);

        var made = Generate(record, RecordedWeather.MeasuredSite, 1);
        var shuffled = made with
        {
            Days =
            [
                .. made.Days.Select((reading, index) => (Reading: reading, Date: FirstDay.AddDays(index)))
                    .OrderBy(day => day.Date.Year).ThenBy(day => day.Date.Month).ThenBy(day => SeededValue.Uniform(1, "shuffled", day.Date.DayNumber))
                    .Select(day => day.Reading),
            ],
        };
        var unlike = WeatherLikeness.Between(record, shuffled).Where(distance => Math.Abs(distance.StandardErrors) > 4).Select(distance => distance.Name).ToList();
        Assert.Contains("maximum with its day before", unlike);
        Assert.Contains("minimum with its day before", unlike);
        Assert.Contains("length of wet spells", unlike);
    }

    [Fact]
    public void The_same_seed_gives_the_same_bits_and_another_seed_other_weather()
    {
        var first = Generate(RecordedWeather.Invented, RecordedWeather.InventedSite, 3, years: 2);
        Assert.Equal(first.Days, Generate(RecordedWeather.Invented, RecordedWeather.InventedSite, 3, years: 2).Days);
        Assert.True(first.IsGenerated);
        Assert.Equal((FirstDay, 730), (first.FirstDay, first.DayCount));

        var second = Generate(RecordedWeather.Invented, RecordedWeather.InventedSite, 4, years: 2);
        Assert.DoesNotContain(first.Days.Zip(second.Days), pair => pair.First.MaximumTemperatureCelsius == pair.Second.MaximumTemperatureCelsius);
    }

    [Theory]
    [InlineData(38.4)]
    [InlineData(-34)]
    [InlineData(62)]
    public void Every_day_is_physically_possible(double latitude)
    {
        var site = RecordedWeather.InventedSite with { Latitude = latitude };
        var record = RecordedWeather.Invented;
        for (ulong seed = 0; seed < 10; seed++)
        {
            var made = Generate(record, site, seed, years: 20);
            for (var index = 0; index < made.DayCount; index++)
            {
                var day = made.Days[index];
                var dayOfYear = FirstDay.AddDays(index).DayOfYear;
                Assert.True(day.MinimumTemperatureCelsius <= day.MaximumTemperatureCelsius);
                Assert.InRange(day.GlobalRadiation!.Value, 0, ExtraterrestrialRadiation.Daily(latitude, dayOfYear));
                Assert.InRange(day.VaporPressure!.Value, double.Epsilon, SaturationVaporPressure.At(day.MaximumTemperatureCelsius));
                Assert.True(day.WindSpeed > 0);
                Assert.True(day.Rain is 0 or >= 0.1);
            }
        }
    }

    /// <summary>The largest of 240 years' days lie beyond the record's, but not where no air has been.</summary>
    [Fact]
    public void Extremes_go_beyond_the_record_as_a_normal_tail_does()
    {
        var made = Generate(RecordedWeather.Measured, RecordedWeather.MeasuredSite, 1, years: 240);
        var record = RecordedWeather.Measured;
        Assert.InRange(made.Days.Max(day => day.MaximumTemperatureCelsius) - record.Days.Max(day => day.MaximumTemperatureCelsius), 0.1, 8);
        Assert.InRange(record.Days.Min(day => day.MinimumTemperatureCelsius) - made.Days.Min(day => day.MinimumTemperatureCelsius), 0.1, 8);
    }

    [Fact]
    public void What_the_record_lacks_stays_missing()
    {
        var measured = Generate(RecordedWeather.Measured, RecordedWeather.MeasuredSite, 1, years: 1);
        Assert.All(measured.Days, day => Assert.True(day is { GlobalRadiation: null, VaporPressure: null, Rain: not null, WindSpeed: not null }));

        var bare = RecordedWeather.Invented with { Days = [.. RecordedWeather.Invented.Days.Select(day => day with { Rain = null, WindSpeed = null })] };
        var made = Generate(bare, RecordedWeather.InventedSite, 1);
        Assert.All(made.Days, day => Assert.True(day is { Rain: null, WindSpeed: null, GlobalRadiation: not null }));
        var distances = WeatherLikeness.Between(bare, made);
        Assert.InRange(WeatherLikeness.RootMeanSquare(distances), 0, 1);
    }

    [Fact]
    public void A_quantity_that_never_changes_never_changes()
    {
        var still = RecordedWeather.Invented with { Days = [.. RecordedWeather.Invented.Days.Select(day => day with { WindSpeed = 2 })] };
        Assert.All(Generate(still, RecordedWeather.InventedSite, 1, years: 2).Days, day => Assert.Equal(2, day.WindSpeed!.Value, 1e-3));
    }

    [Fact]
    public void Hours_are_taken_by_days()
    {
        var days = RecordedWeather.Invented.Days;
        var hours = days.SelectMany(day => Enumerable.Range(0, 24).Select(hour => new HourlyReading(
            hour switch { 5 => day.MinimumTemperatureCelsius, 15 => day.MaximumTemperatureCelsius, _ => (day.MinimumTemperatureCelsius + day.MaximumTemperatureCelsius) / 2 },
            day.VaporPressure,
            hour is >= 6 and < 18 ? day.GlobalRadiation * 1e6 / 3600 / 12 : 0,
            null, null, day.Rain / 24, day.WindSpeed, null))).ToList();
        var byDays = Generate(RecordedWeather.Invented, RecordedWeather.InventedSite, 5, years: 1);
        var byHours = Generate(RecordedWeather.Invented with { Days = [], Hours = hours }, RecordedWeather.InventedSite, 5, years: 1);
        foreach (var (one, other) in byDays.Days.Zip(byHours.Days))
        {
            // Sums of hours round; the rest is the same.
            Assert.Equal(one.MaximumTemperatureCelsius, other.MaximumTemperatureCelsius, 1e-9);
            Assert.Equal(one.GlobalRadiation!.Value, other.GlobalRadiation!.Value, 1e-6);
            Assert.Equal(one.Rain!.Value, other.Rain!.Value, 1e-6);
        }
    }

    [Fact]
    public void Less_than_a_year_is_no_climate()
    {
        var part = RecordedWeather.Invented with { Days = [.. RecordedWeather.Invented.Days.Take(364)] };
        var error = Assert.Throws<SeasonInputException>(() => WeatherClimate.Of(part, RecordedWeather.InventedSite));
        Assert.Equal("weather.seed", error.Key);
        Assert.Contains("364 days", error.Message, StringComparison.Ordinal);
    }
}
