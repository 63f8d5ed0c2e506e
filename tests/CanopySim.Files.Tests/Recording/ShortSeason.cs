using CanopySim.Files.Recording;
using CanopySim.Files.Results;
using CanopySim.Phenology;
using CanopySim.Results;
using CanopySim.Training;
using CanopySim.Weather;

namespace CanopySim.Files.Tests.Recording;

/// <summary>Two months of a few invented shoots in invented heat, computed once and recorded; they ripen.</summary>
internal static class ShortSeason
{
    private const int Days = 60;

    private static readonly DateOnly FirstDay = new(2025, 5, 1);

    private static readonly Lazy<(SeasonResult Result, MemoryBlocks Blocks)> Recorded = new(Record);

    public static Scenario Scenario { get; } = new()
    {
        Name = "two warm months",
        Site = new Site { Latitude = 40, Longitude = 0 },
        Weather = new WeatherOptions { File = "" },
        Season = new SeasonPlan { Budbreak = FirstDay, TargetSugar = 10 },
        Rows = new RowLayout { Spacing = 1.5, VineSpacing = 0.6, Azimuth = 20 },
        CanopyWork = new CanopyWork { ShootsPerMeter = 5, Topping = [new Topping { WhenShootsReach = 0.6, Nodes = 8 }] },
        Cultivar = new Cultivar { BloomSum = 250, VeraisonSum = 400 },
        Growth = new Growth.GrowthParameters { LateralDelay = 50 },
    };

    public static InputHashes Inputs { get; } = new("00", [], "11");

    public static SeasonResult Result => Recorded.Value.Result;

    public static MemoryBlocks Blocks => Recorded.Value.Blocks;

    public static SeasonRecording Recording() => new(Blocks, "a season");

    public static SeasonResult Run(Scenario scenario, WeatherSeries weather, Action<CanopySim.Recording.RecordedDay>? recorder = null) =>
        Simulation.Run(scenario, weather, utcOffsetHours: 0, new SeasonOptions { Quality = Quality.Draft, LeavesOn = LeavesOn, Recorder = recorder });

    public static DateOnly[] LeavesOn { get; } = [new(2025, 5, 20), new(2025, 6, 10)];

    public static WeatherSeries Weather()
    {
        var record = new WeatherRecord
        {
            FirstDay = FirstDay,
            Days = [.. Enumerable.Range(0, Days).Select(day => new DailyReading(18 + (day % 5), 34, null, null, day % 7 == 0 ? 3 : 0, 2))],
        };
        return WeatherBuilder.Complete(record, Scenario.Weather, Scenario.Site, utcOffsetHours: 0);
    }

    /// <summary>Writes it into a file too.</summary>
    public static void WriteFile(string path)
    {
        using var file = new FileBlockWriter(path);
        var writer = new RecordingWriter(file, Scenario, Weather(), 0, Quality.Draft, Inputs);
        writer.Finish(Run(Scenario, Weather(), writer.Add));
        file.Finish();
    }

    private static (SeasonResult Result, MemoryBlocks Blocks) Record()
    {
        var blocks = new MemoryBlocks();
        var writer = new RecordingWriter(blocks, Scenario, Weather(), 0, Quality.Draft, Inputs);
        var result = Run(Scenario, Weather(), writer.Add);
        writer.Finish(result);
        return (result, blocks);
    }
}
