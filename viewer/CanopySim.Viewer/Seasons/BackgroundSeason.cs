using CanopySim.Files.Recording;
using CanopySim.Files.Results;
using CanopySim.Weather;

namespace CanopySim.Viewer.Seasons;

/// <summary>
/// A season that is computed on threads of its own while somebody looks at the days that are there. Disposing it stops
/// it between two days.
/// </summary>
public sealed class BackgroundSeason : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly MemoryBlocks _blocks = new();
    private readonly Task _task;
    private double _share;

    /// <summary>Begins to compute.</summary>
    /// <param name="scenario">The block.</param>
    /// <param name="weather">Its weather.</param>
    /// <param name="utcOffsetHours">Local standard time less UTC [h].</param>
    /// <param name="quality">How finely.</param>
    /// <param name="threads">Threads that compute.</param>
    /// <param name="inputs">Hashes of what was read.</param>
    /// <exception cref="SeasonInputException">Scenario and weather do not fit together.</exception>
    public BackgroundSeason(
        Scenario scenario, WeatherSeries weather, double utcOffsetHours, Quality quality, int threads,
            InputHashes inputs)
    {
        var writer = new RecordingWriter(_blocks, scenario, weather, utcOffsetHours, quality, inputs);
        Recording = new SeasonRecording(_blocks, scenario.Name);
        var options = new SeasonOptions
        {
            Quality = quality,
            Threads = threads,
            Recorder = writer.Add,
            Progress = (_, share) => Volatile.Write(ref _share, share),
            Cancellation = _stop.Token,
        };
        _task = Task.Factory.StartNew(
            () => writer.Finish(Simulation.Run(scenario, weather, utcOffsetHours, options)), CancellationToken.None,
                TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    /// <summary>The days so far, and what it gave once it is finished.</summary>
    public SeasonRecording Recording { get; }

    /// <summary>Share of the season that is behind [0 to 1].</summary>
    public double ShareDone => Recording.IsFinished ? 1 : Volatile.Read(ref _share);

    /// <summary>Why it ended before its end; null where it did not, or was stopped.</summary>
    public string? Failure =>
        _task.Exception?.GetBaseException() is { } error and not OperationCanceledException ? error.Message : null;

    /// <summary>Waits for its end, for whoever has nothing to show in the meantime; false where it goes on.</summary>
    /// <param name="time">No longer than this.</param>
    /// <param name="cancellation">Stops the season.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public bool WaitUpTo(TimeSpan time, CancellationToken cancellation)
    {
        using var stop = cancellation.Register(_stop.Cancel);
        if (Task.WhenAny(_task,
            Task.Delay(time, CancellationToken.None)).GetAwaiter().GetResult() != _task) return false;
        _task.GetAwaiter().GetResult();
        return true;
    }

    public void Dispose()
    {
        _stop.Cancel();
        try
        {
            _task.Wait();
        }
        catch (AggregateException)
        {
            // Stopped, or failed and told so.
        }

        _stop.Dispose();
    }
}
