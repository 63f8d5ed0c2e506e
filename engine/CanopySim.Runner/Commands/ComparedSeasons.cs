using System.Diagnostics;
using CanopySim.Files;
using CanopySim.Files.Charts;
using CanopySim.Results;

namespace CanopySim.Runner.Commands;

/// <summary>An option that is done, with the charts of its own report.</summary>
public sealed record FinishedOption(SeasonResult Season, IReadOnlyList<ChartPicture> Charts);

/// <summary>
/// Runs the seasons of a comparison, as many at once as there are threads; where there are more threads than seasons
/// the seasons share them. Each gives what it gives alone. The first that fails stops the others.
/// </summary>
internal sealed class ComparedSeasons(
    IReadOnlyList<SeasonInput> inputs, IReadOnlyList<string> names, Quality quality, int threads,
    ProgressLine progress, CancellationToken stopped)
{
    private readonly double[] _shares = new double[inputs.Count];
    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private int _done;

    /// <param name="written">Writes an option's results and returns its charts; called once an option, from any
    /// thread.</param>
    public IReadOnlyList<FinishedOption> Run(Func<int, SeasonResult, IReadOnlyList<ChartPicture>> written)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(stopped);
        var finished = new FinishedOption[inputs.Count];
        var faults = new Exception?[inputs.Count];
        var next = -1;
        var workers = Enumerable.Range(0, Math.Min(threads, inputs.Count)).Select(_ => Task.Factory.StartNew(
            () =>
            {
                while (!stop.IsCancellationRequested && Interlocked.Increment(ref next) is var i && i < inputs.Count)
                {
                    try
                    {
                        var season = Season(i, stop.Token);
                        finished[i] = new FinishedOption(season, written(i, season));
                        Interlocked.Increment(ref _done);
                    }
                    catch (Exception fault)
                    {
                        faults[i] = fault;
                        stop.Cancel();
                    }
                }
            },
            CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)).ToArray();
        Task.WaitAll(workers);
        stopped.ThrowIfCancellationRequested();
        for (var i = 0; i < inputs.Count; i++)
        {
            if (faults[i] is { } fault and not OperationCanceledException) throw Named(fault, i);
        }

        return finished;
    }

    /// <summary>Threads of a season: its share of all among those that begin with it.</summary>
    internal static int ThreadsOf(int option, int options, int threads)
    {
        var together = Math.Min(threads, options);
        var first = option / together * together;
        var round = Math.Min(together, options - first);
        return (threads / round) + (option - first < threads % round ? 1 : 0);
    }

    private SeasonResult Season(int option, CancellationToken stop)
    {
        var input = inputs[option];
        var start = _watch.Elapsed;
        return Simulation.Run(input.Document.Scenario, input.Weather, input.UtcOffsetHours, new SeasonOptions
        {
            Quality = quality,
            Threads = ThreadsOf(option, inputs.Count, threads),
            Seconds = () => (_watch.Elapsed - start).TotalSeconds,
            Progress = (_, share) => Show(option, share),
            Cancellation = stop,
        });
    }

    private void Show(int option, double share)
    {
        lock (_shares)
        {
            _shares[option] = share;
            progress.Show($"{_done} of {inputs.Count} options done", _shares.Average());
        }
    }

    // Which option it was stands before what went wrong.
    private Exception Named(Exception fault, int option) => fault switch
    {
        SeasonInputException wrong =>
            new SeasonInputException($"{inputs[option].Document.Path}: {wrong.Key}", wrong.Message),
        IOException or UnauthorizedAccessException => new IOException($"{names[option]}: {fault.Message}", fault),
        _ => new InvalidOperationException($"{names[option]} ({inputs[option].Document.Path}): {fault.Message}", fault),
    };
}
