using CanopySim.Files;
using CanopySim.Files.Recording;
using CanopySim.Files.Results;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Weather;
using CanopySim.Results;
using CanopySim.Weather;

namespace CanopySim.Viewer.Tests.Screen;

/// <summary>One draft season of the shipped first scenario, recorded in memory, for all tests of the screen.</summary>
public static class GrownSeason
{
    private static readonly Lazy<(MemoryBlocks Blocks, SeasonResult Result)> Grown = new(Grow);

    public static DateOnly LeavesOn { get; } = new(2025, 8, 12);

    public static SeasonResult Result => Grown.Value.Result;

    /// <summary>The season, with nothing of it read yet.</summary>
    public static SeasonRecording Open() => new(Grown.Value.Blocks, "the test's season");

    /// <summary>A recording of the season's first days, as it is while it is being computed.</summary>
    public static (SeasonRecording Recording, Action AddDay) OpenUnfinished(int days)
    {
        var (whole, part) = (Grown.Value.Blocks, new MemoryBlocks());
        part.Add(BlockKind.Head, whole.Read(BlockKind.Head, 0));
        part.Add(BlockKind.Weather, whole.Read(BlockKind.Weather, 0));
        for (var canopy = 0; canopy < whole.Count(BlockKind.Canopy); canopy++) part.Add(BlockKind.Canopy,
            whole.Read(BlockKind.Canopy, canopy));
        for (var day = 0; day < days; day++) AddDay();
        return (new SeasonRecording(part, "the test's unfinished season"), AddDay);

        void AddDay()
        {
            var next = part.Count(BlockKind.Day);
            part.Add(BlockKind.Hours, whole.Read(BlockKind.Hours, next));
            part.Add(BlockKind.Day, whole.Read(BlockKind.Day, next));
        }
    }

    private static (MemoryBlocks, SeasonResult) Grow()
    {
        var document = ScenarioFile.Read(ScenarioPath);
        var record = SeasonWeather.Read(document);
        var offset = SiteTime.Of(document.Scenario.Site).StandardOffsetHours(record.FirstDay.Year);
        var weather = WeatherBuilder.Complete(record, document.Scenario.Weather, document.Scenario.Site, offset);
        var blocks = new MemoryBlocks();
        var writer = new RecordingWriter(blocks, document.Scenario, weather, offset, Quality.Draft,
            InputHashes.Of(document));
        var result = Simulation.Run(document.Scenario, weather, offset, new SeasonOptions
        {
            Quality = Quality.Draft,
            LeavesOn = [LeavesOn],
            Recorder = writer.Add,
        });
        writer.Finish(result);
        return (blocks, result);
    }

    public static string ScenarioPath
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName,
                "CanopySim.sln"))) folder = folder.Parent;
            return Path.Combine(folder?.FullName ?? ".", "scenarios", "first-season", "scenario.yaml");
        }
    }
}
