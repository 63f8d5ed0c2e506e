using CanopySim.Files.Scenarios;
using CanopySim.Files.Tests.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Files.Tests.Weather;

public sealed class SeasonWeatherTest
{
    private static readonly string FirstSeason = Path.Combine(ShippedScenariosTest.Folder, "first-season", "scenario.yaml");

    [Fact]
    public void Without_a_seed_the_weather_is_the_files()
    {
        var document = ScenarioFile.Read(FirstSeason);
        var record = SeasonWeather.Read(document);
        Assert.False(record.IsGenerated);
        Assert.Equal(WeatherFile.Read(document.WeatherPath, document.Scenario.Weather, document.Scenario.Site).Days, record.Days);
        Assert.DoesNotContain(EstimatedInput.GeneratedWeather, Complete(record, document).EstimatedInputs);
    }

    [Fact]
    public void A_seed_makes_other_weather_of_the_same_days_and_says_so()
    {
        var document = ScenarioFile.Read(FirstSeason, ["weather.seed=3"]);
        Assert.Equal(3UL, document.Scenario.Weather.Seed);
        var record = SeasonWeather.Read(document);
        Assert.Equal((new DateOnly(2025, 1, 1), 365), (record.FirstDay, record.DayCount));
        Assert.Equal(record.Days, SeasonWeather.Read(document).Days);
        Assert.NotEqual(record.Days, SeasonWeather.Read(ScenarioFile.Read(FirstSeason, ["weather.seed=4"])).Days);
        Assert.Equal(EstimatedInput.GeneratedWeather, Complete(record, document).EstimatedInputs[0]);
    }

    [Theory]
    [InlineData("-1")]
    [InlineData("1.5")]
    [InlineData("autumn")]
    public void A_seed_is_a_whole_number_from_0(string seed) =>
        Assert.Equal("weather.seed", Assert.Throws<InputError>(() => ScenarioFile.Read(FirstSeason, [$"weather.seed={seed}"])).Key);

    [Theory]
    [InlineData("2 K")]
    [InlineData("2 °C")]
    [InlineData("3.6 °F")]
    public void Warming_is_a_difference_in_any_unit_and_is_said(string warming)
    {
        var plain = SeasonWeather.Read(ScenarioFile.Read(FirstSeason));
        var document = ScenarioFile.Read(FirstSeason, [$"weather.warming={warming}"]);
        Assert.Equal(2, document.Scenario.Weather.Warming, 1e-12);
        var record = SeasonWeather.Read(document);
        Assert.All(plain.Days.Zip(record.Days), pair =>
            Assert.Equal(pair.First.MaximumTemperatureCelsius + 2, pair.Second.MaximumTemperatureCelsius, 1e-9));
        Assert.Contains(EstimatedInput.ShiftedWeather, Complete(record, document).EstimatedInputs);
        Assert.DoesNotContain(EstimatedInput.ShiftedWeather, Complete(plain, document).EstimatedInputs);
    }

    [Fact]
    public void A_seeds_weather_is_warmed_too()
    {
        var plain = SeasonWeather.Read(ScenarioFile.Read(FirstSeason, ["weather.seed=3"]));
        var warmed = SeasonWeather.Read(ScenarioFile.Read(FirstSeason, ["weather.seed=3", "weather.summer_warming=4 K", "weather.rain_factor=0.5"]));
        for (var day = 0; day < plain.DayCount; day++)
        {
            var summer = plain.FirstDay.AddDays(day).Month is >= 6 and <= 8;
            Assert.Equal(plain.Days[day].MinimumTemperatureCelsius + (summer ? 4 : 0), warmed.Days[day].MinimumTemperatureCelsius, 1e-9);
            Assert.Equal(plain.Days[day].Rain!.Value / 2, warmed.Days[day].Rain!.Value, 1e-9);
        }
    }

    [Theory]
    [InlineData("2")]
    [InlineData("275 K")]
    [InlineData("2 m")]
    public void Warming_that_is_no_difference_is_refused(string warming)
    {
        var error = Assert.Throws<InputError>(() => ScenarioFile.Read(FirstSeason, [$"weather.warming={warming}"]));
        Assert.Equal("weather.warming", error.Key);
        Assert.Contains("-10 to 10 K", error.Message, StringComparison.Ordinal);
    }

    private static WeatherSeries Complete(WeatherRecord record, ScenarioDocument document) =>
        WeatherBuilder.Complete(record, document.Scenario.Weather, document.Scenario.Site, -8);
}
