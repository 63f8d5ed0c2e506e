using CanopySim.Files;
using CanopySim.Files.Recording;
using CanopySim.Files.Results;

namespace CanopySim.Viewer.Commands;

/// <summary>Where a recorded season comes from: a file, a results folder, or a scenario that is computed now.</summary>
public static class RecordingSource
{
    /// <summary>Opens or computes it.</summary>
    /// <param name="path">A season.bin, a folder that holds one, or a scenario.</param>
    /// <param name="progress">Told the day that is done and the share of the season behind it, while it is computed.</param>
    /// <param name="cancellation">Stops the computation.</param>
    /// <exception cref="InputError">It is none of these, or damaged.</exception>
    public static SeasonRecording Open(string path, Action<DateOnly, double>? progress, CancellationToken cancellation)
    {
        if (Directory.Exists(path))
        {
            var file = Path.Combine(path, RecordingWriter.FileName);
            if (File.Exists(file)) return SeasonRecording.Open(file);
            throw new InputError(
                new InputPlace(path), $"no {RecordingWriter.FileName} in this folder",
                "results written by 'canopysim season SCENARIO --record', or a scenario file");
        }

        return IsScenario(path) ? Compute(path, progress, cancellation) : SeasonRecording.Open(path);
    }

    /// <summary>Whether a path is read as a scenario.</summary>
    public static bool IsScenario(string path) => Path.GetExtension(path).ToLowerInvariant() is ".yaml" or ".yml";

    private static SeasonRecording Compute(string path, Action<DateOnly, double>? progress, CancellationToken cancellation)
    {
        var input = SeasonInput.Read(path, []);
        var (scenario, blocks) = (input.Document.Scenario, new MemoryBlocks());
        var writer = new RecordingWriter(blocks, scenario, input.Weather, input.UtcOffsetHours, Quality.Draft, InputHashes.Of(input.Document));
        var result = Simulation.Run(scenario, input.Weather, input.UtcOffsetHours, new SeasonOptions
        {
            Quality = Quality.Draft,
            Threads = Environment.ProcessorCount,
            Progress = progress,
            Cancellation = cancellation,
            Recorder = writer.Add,
        });
        writer.Finish(result);
        return new SeasonRecording(blocks, path);
    }
}
