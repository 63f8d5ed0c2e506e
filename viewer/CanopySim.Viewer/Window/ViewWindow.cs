using System.Diagnostics;
using CanopySim.Drawing;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.Seasons;
using CanopySim.Viewer.State;

namespace CanopySim.Viewer.Window;

/// <summary>Runs a screen in a window until it is closed. Where nothing is to be done it sleeps.</summary>
public static class ViewWindow
{
    // Longest sleep [s]: a wake that came between looking and sleeping is made good then.
    private const double LongestSleep = 1;

    // A season that plays changes a few times a second: no need to ask more often than a screen shows [s].
    private const double ShortestSleep = 0.008;

    /// <param name="window">Where.</param>
    /// <param name="screen">What is shown.</param>
    /// <param name="running">The season where it is still being computed; null where it is there.</param>
    /// <param name="report">Told the screen after each frame, for tests that drive a real window; null for
    /// nobody.</param>
    /// <param name="stop">Closes it.</param>
    public static void Run(
        IWindow window, ScreenModel screen, BackgroundSeason? running, Action<ScreenModel>? report,
            CancellationToken stop)
    {
        using var session = new ViewSession(window, screen);
        using var wake = stop.Register(window.Wake);
        var events = new Queue<InputEvent>();
        var clock = Stopwatch.StartNew();
        var told = -1.0;
        while (!window.IsClosing && !stop.IsCancellationRequested)
        {
            window.Take(events, session.NeedsFrame ? 0
                : Math.Clamp(session.SecondsToNextFrame ?? LongestSleep, ShortestSleep, LongestSleep));
            while (events.TryDequeue(out var happened)) screen.Enqueue(happened);
            if (running is not null && running.ShareDone != told) screen.Enqueue(
                new SeasonProgress(told = running.ShareDone));
            if (running?.Failure is { } failure) throw new DrawingException(
                $"the season could not be computed: {failure}");
            var seconds = clock.Elapsed.TotalSeconds;
            clock.Restart();
            session.Advance(seconds);
            if (!session.NeedsFrame) continue;
            session.Draw(0);
            window.Present();
            report?.Invoke(screen);
        }
    }
}
