using CanopySim.Files;
using CanopySim.Files.Recording;
using CanopySim.Files.Results;
using CanopySim.Viewer.Seasons;

namespace CanopySim.Viewer.Commands;

/// <summary>
/// Where a recorded season comes from: a file, a results folder, or a scenario that is computed at draft quality in the
/// background.
/// </summary>
public sealed class RecordingSource : IDisposable
{
    private RecordingSource(SeasonRecording recording, BackgroundSeason? running, string folder) =>
        (Recording, Running, Folder) = (recording, running, folder);

    public SeasonRecording Recording { get; }

    /// <summary>The computation, where the season is being computed; null where it was recorded.</summary>
    public BackgroundSeason? Running { get; }

    /// <summary>
    /// Where a scenario of the reader's own would be saved: beside the one that was opened, or in the folder at work.
    /// </summary>
    public string Folder { get; }

    /// <summary>Opens it, or begins to compute it.</summary>
    /// <param name="path">A season.bin, a folder that holds one, or a scenario.</param>
    /// <param name="threads">Threads that compute.</param>
    /// <exception cref="InputError">It is none of these, or damaged.</exception>
    public static RecordingSource Open(string path, int threads)
    {
        if (Directory.Exists(path))
        {
            var file = Path.Combine(path, RecordingWriter.FileName);
            if (File.Exists(file)) return new RecordingSource(SeasonRecording.Open(file), null,
                Directory.GetCurrentDirectory());
            throw new InputError(
                new InputPlace(path), $"no {RecordingWriter.FileName} in this folder",
                "results written by 'canopysim season SCENARIO --record', or a scenario file");
        }

        if (!IsScenario(path)) return new RecordingSource(SeasonRecording.Open(path), null,
            Directory.GetCurrentDirectory());
        var input = SeasonInput.Read(path, []);
        var running = new BackgroundSeason(
            input.Document.Scenario, input.Weather, input.UtcOffsetHours, Quality.Draft, threads,
                InputHashes.Of(input.Document));
        return new RecordingSource(running.Recording, running, Path.GetDirectoryName(Path.GetFullPath(path))!);
    }

    /// <summary>Whether a path is read as a scenario.</summary>
    public static bool IsScenario(string path) => Path.GetExtension(path).ToLowerInvariant() is ".yaml" or ".yml";

    /// <summary>Waits until all of the season is there.</summary>
    /// <param name="progress">Told the share of the season that is behind.</param>
    /// <param name="cancellation">Stops the computation.</param>
    public void Wait(Action<double> progress, CancellationToken cancellation)
    {
        if (Running is not { } season) return;
        while (!season.WaitUpTo(TimeSpan.FromMilliseconds(200), cancellation)) progress(season.ShareDone);
    }

    public void Dispose()
    {
        Running?.Dispose();
        Recording.Dispose();
    }
}
