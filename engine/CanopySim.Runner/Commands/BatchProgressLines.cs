using System.Diagnostics;
using System.Globalization;
using CanopySim.Files.Batch;

namespace CanopySim.Runner.Commands;

/// <summary>
/// How far a batch is, how fast it goes and what is left, on the error stream: one line that changes where a person watches,
/// else a line now and then.
/// </summary>
public sealed class BatchProgressLines(bool quiet) : IDisposable
{
    private static readonly TimeSpan BetweenLines = TimeSpan.FromSeconds(15);
    private static readonly TimeSpan BetweenChanges = TimeSpan.FromSeconds(0.25);

    private readonly bool _isTerminal = !Console.IsErrorRedirected;
    private readonly long _start = Stopwatch.GetTimestamp();
    private long _shown = Stopwatch.GetTimestamp();
    private int _longest;

    public void Show(BatchProgress progress)
    {
        if (quiet || Stopwatch.GetElapsedTime(_shown) < (_isTerminal ? BetweenChanges : BetweenLines)) return;
        _shown = Stopwatch.GetTimestamp();
        Write(progress);
    }

    /// <summary>The last line, however soon it comes.</summary>
    public void End(BatchProgress progress)
    {
        if (!quiet) Write(progress);
    }

    public void Dispose()
    {
        if (_longest > 0) Console.Error.WriteLine();
    }

    /// <summary>The line: seasons done, failed, a minute, and the time that is left.</summary>
    public static string Line(BatchProgress progress, TimeSpan elapsed)
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"{progress.Done} of {progress.Items} seasons");
        if (progress.Failed > 0) text += string.Create(CultureInfo.InvariantCulture, $", {progress.Failed} failed");
        var minutes = elapsed.TotalMinutes;
        if (progress.Grown == 0 || minutes <= 0) return text;
        var rate = progress.Grown / minutes;
        text += string.Create(CultureInfo.InvariantCulture, $", {rate:0.#} a minute");
        var left = progress.Items - progress.Done;
        return left > 0 ? $"{text}, {Duration(TimeSpan.FromMinutes(Math.Min(left / rate, 5e6)))} left" : text;
    }

    private static string Duration(TimeSpan time) => time.TotalHours >= 48
        ? string.Create(CultureInfo.InvariantCulture, $"{time.TotalDays:0.#} days")
        : time.TotalHours >= 1
            ? string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalHours} h {time.Minutes} min")
            : time.TotalMinutes >= 1
                ? string.Create(CultureInfo.InvariantCulture, $"{time.Minutes} min {time.Seconds} s")
                : string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0} s");

    private void Write(BatchProgress progress)
    {
        var line = Line(progress, Stopwatch.GetElapsedTime(_start));
        if (!_isTerminal)
        {
            Console.Error.WriteLine(line);
            return;
        }

        _longest = Math.Max(_longest, line.Length);
        Console.Error.Write($"\r{line.PadRight(_longest)}");
    }
}
