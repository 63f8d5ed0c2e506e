using CanopySim.Fitting;
using CanopySim.Numerics;
using CanopySim.Weather;

namespace CanopySim.Files.Tests.Forecast.Twins;

/// <summary>What a forecast said of one thing, and what came. Days as day numbers, leaf area [m²]; infinite where it never comes.</summary>
internal readonly record struct TwinReading(string Quantity, DateOnly AsOf, double Truth, double P10, double P50, double P90)
{
    public bool IsInside => Truth >= P10 && Truth <= P90;
}

/// <summary>Forecasts a twin from its notes and its station's weather, and holds them against what came.</summary>
internal static class TwinTrial
{
    public const string Bloom = "bloom";
    public const string Veraison = "veraison";
    public const string LeafArea = "leaf area at veraison";
    public const string Ripeness = "ripeness";

    /// <summary>What one forecast said of what had not come.</summary>
    public static IReadOnlyList<TwinReading> Run(TwinBlock block, TwinTruth twin, DateOnly asOf, int members, ulong seed, int threads)
    {
        var season = Part(twin.StationWeather, asOf);
        var record = block.Record with { Days = [.. block.Record.Days, .. season.Days] };
        var known = WeatherBuilder.Complete(season, block.Scenario.Weather, block.Scenario.Site, block.UtcOffsetHours);
        var lastDay = SeasonCalendar.Of(block.Scenario, known).LastDay;
        var weather = new WeatherAhead(known, record, block.Scenario, block.UtcOffsetHours, lastDay, seed);
        var noted = TwinNotes.Of(twin, asOf);
        var forecast = VineForecast.Make(
            block.Scenario, known, weather, block.UtcOffsetHours, asOf, noted.Observations,
            new ForecastOptions { Members = members, MembersOfOption = 0, Seed = seed, Threads = threads, StandingQuality = Quality.Rough });
        var readings = new List<TwinReading>();
        AddStage(readings, Bloom, asOf, twin.Dates.Bloom, forecast.Bloom);
        AddStage(readings, Veraison, asOf, twin.Dates.Veraison, forecast.Veraison);
        AddStage(readings, Ripeness, asOf, twin.Dates.TargetSugar, forecast.TargetSugar);
        var areas = forecast.LeafAreaAtVeraison;
        if (twin.LeafAreaAtVeraison is { } area && twin.Dates.Veraison > asOf && areas.Count > 0)
        {
            readings.Add(new TwinReading(
                LeafArea, asOf, area, Quantile.Of(areas, 0.1), Quantile.Of(areas, 0.5), Quantile.Of(areas, 0.9)));
        }

        return readings;
    }

    private static void AddStage(List<TwinReading> readings, string name, DateOnly asOf, DateOnly? truth, StageRange range)
    {
        if (truth <= asOf) return;
        readings.Add(new TwinReading(name, asOf, Number(truth), Number(range.P10), Number(range.P50), Number(range.P90)));

        static double Number(DateOnly? day) => day?.DayNumber ?? double.PositiveInfinity;
    }

    private static WeatherRecord Part(WeatherRecord year, DateOnly to) =>
        year with { Days = [.. year.Days.Take(to.DayNumber - year.FirstDay.DayNumber + 1)] };
}
