using CanopySim.Drawing;
using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Pictures;
using CanopySim.Files.Charts;

namespace CanopySim.Runner.Commands;

/// <summary>
/// Draws canopies in perspective on a thread of its own, beside charts and tables. A machine that cannot draw them still
/// gets its report, which then says what to install.
/// </summary>
internal static class CanopyPerspectives
{
    /// <summary>Begins to draw; all are seen from one place.</summary>
    /// <param name="canopies">The canopies in order; null where nothing grew.</param>
    /// <returns>One of each canopy, once they are drawn.</returns>
    public static Task<IReadOnlyList<CanopyPerspective>> Begin(IReadOnlyList<KeptCanopy?> canopies) =>
        Task.Factory.StartNew(
            () => Draw(canopies), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);

    /// <summary>Says on the error stream why there are none, once for all.</summary>
    public static void TellMissing(IEnumerable<CanopyPerspective> perspectives)
    {
        if (perspectives.FirstOrDefault(one => one.Missing is not null) is { } missing)
            Console.Error.WriteLine($"canopysim: the report has no picture in perspective. {missing.Missing}");
    }

    // A context belongs to the thread that made it.
    private static IReadOnlyList<CanopyPerspective> Draw(IReadOnlyList<KeptCanopy?> canopies)
    {
        var grown = canopies.OfType<KeptCanopy>().ToList();
        if (grown.Count == 0) return [.. canopies.Select(_ => CanopyPerspective.None)];
        try
        {
            using var context = EglContext.Create();
            using var pictures = new PortraitPictures(context);
            var drawn = new Queue<ChartPicture>(pictures.Draw(grown));
            return
            [
                .. canopies.Select(canopy =>
                    canopy is null ? CanopyPerspective.None : new CanopyPerspective(drawn.Dequeue(), null)),
            ];
        }
        catch (DrawingException missing)
        {
            return [.. canopies.Select(canopy => new CanopyPerspective(null, canopy is null ? null : missing.Message))];
        }
    }
}
