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

    private static WeatherSeries Complete(WeatherRecord record, ScenarioDocument document) =>
        WeatherBuilder.Complete(record, document.Scenario.Weather, document.Scenario.Site, -8);
}
