using System.Globalization;
using CanopySim.Results;
using CanopySim.Training;
using CanopySim.Water;
using CanopySim.Weather;

namespace CanopySim.Tests.Seasons;

/// <summary>Blocks and weather for whole seasons: the invented weather of the first-season scenario, by itself or altered.</summary>
internal static class SeasonCases
{
    public const double UtcOffset = -8;

    private const int DaysToTheSouth = 181;

    /// <summary>The block of the first-season scenario.</summary>
    public static Scenario FirstSeason { get; } = new()
    {
        Name = "First season",
        Site = new Site { Latitude = 38.4, Longitude = -122.3, Elevation = 60 },
        Weather = new WeatherOptions { File = "weather.csv" },
        Season = new SeasonPlan { Year = 2025, TargetSugar = 22 },
        Rows = new RowLayout { Spacing = 2.4, VineSpacing = 1.5 },
        Soil = new SoilParameters { IrrigateBelow = 0.4 },
    };

    /// <summary>The same on a short piece of row, for seasons that only show a direction; it never ripens early.</summary>
    public static Scenario Small { get; } = FirstSeason with
    {
        Name = "Short piece",
        Rows = new RowLayout { Spacing = 2.4, VineSpacing = 0.6 },
        Season = new SeasonPlan { Year = 2025, Harvest = HarvestRule.None },
    };

    /// <summary>The same on the other side of the year.</summary>
    public static Scenario Southern { get; } = Small with
    {
        Site = new Site { Latitude = -34, Longitude = 18.8, Elevation = 60 },
    };

    public static SeasonOptions Draft(DateOnly? until = null) => new() { Quality = Quality.Draft, Threads = 2, Until = until };

    public static SeasonResult Run(Scenario scenario, DateOnly until, Func<DateOnly, DailyReading, DailyReading>? alter = null) =>
        Simulation.Run(scenario, Northern(scenario, alter), UtcOffset, Draft(until));

    public static WeatherSeries Northern(Scenario scenario, Func<DateOnly, DailyReading, DailyReading>? alter = null)
    {
        var first = new DateOnly(2025, 1, 1);
        var readings = Readings().Select((reading, day) => alter is null ? reading : alter(first.AddDays(day), reading)).ToList();
        return WeatherBuilder.Complete(new WeatherRecord { Days = readings, FirstDay = first }, scenario.Weather, scenario.Site, UtcOffset);
    }

    /// <summary>The weather as it was measured.</summary>
    public static WeatherRecord Record => new() { Days = Readings(), FirstDay = new DateOnly(2025, 1, 1) };

    /// <summary>The year from 1 January, told as if it had begun on 1 July.</summary>
    public static WeatherSeries ShiftedHalfAYear(Scenario scenario) => WeatherBuilder.Complete(
        new WeatherRecord { Days = Readings(), FirstDay = new DateOnly(2025, 1, 1).AddDays(DaysToTheSouth) }, scenario.Weather, scenario.Site, 2);

    public static DateOnly ToTheSouth(DateOnly date) => date.AddDays(DaysToTheSouth);

    // date, tmin °C, tmax °C, rain mm, solar MJ/m2, rh %, wind m/s
    private static List<DailyReading> Readings() =>
    [
        .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Seasons", "weather.csv")).Skip(1).Select(line =>
        {
            var cells = line.Split(',').Skip(1).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray();
            var vaporPressure = cells[4] / 100 * SaturationVaporPressure.At((cells[0] + cells[1]) / 2);
            return new DailyReading(cells[0], cells[1], vaporPressure, cells[3], cells[2], cells[5]);
        }),
    ];
}
