using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Pictures;
using CanopySim.Drawing.Views;
using CanopySim.Files;
using CanopySim.Files.Recording;
using CanopySim.Viewer.Screen;
using CanopySim.Viewer.Seasons;
using CanopySim.Viewer.Window;
using Spectre.Console.Cli;

namespace CanopySim.Viewer.Commands;

/// <summary><c>canopysim-view</c>: a picture, a film, or the window.</summary>
public sealed class ViewCommand : Command<ViewSettings>
{
    private const int WindowWidth = 1280;
    private const int WindowHeight = 800;

    public override int Execute(CommandContext context, ViewSettings settings, CancellationToken cancellationToken)
    {
        // The command line is read whole before a season is computed for it.
        var (options, quantity, hour, day, isOfDay) =
            (settings.Options, settings.Quantity, settings.Hour, settings.Day, settings.IsOfDay);
        CheckTarget("--picture", settings.Picture, ".png");
        CheckTarget("--film", settings.Film, ".gif");
        if (settings.Picture is null && settings.Film is null) return ShowWindow(settings, cancellationToken);
        using var source = Open(settings, cancellationToken);
        var recording = source.Recording;
        var number = NumberOf(recording, day);
        using var gl = EglContext.Create();
        if (settings.Picture is { } picture)
        {
            using var canopy = new CanopyPicture(gl, recording, options);
            Write(picture, canopy.Png(new Moment(number, hour, quantity)), settings.Quiet);
        }

        if (settings.Film is { } film)
        {
            var moments = isOfDay ? CanopyFilm.OfDay(recording, quantity, number)
                : CanopyFilm.OfSeason(recording, quantity, hour);
            if (moments.Count == 0)
                throw new InputError(new InputPlace("--film"), "a season or a day without leaves",
                    "one on which leaves are in the light");
            using var progress = new ProgressLine(settings.Quiet);
            var finished = CanopyFilm.Gif(gl, recording, moments, options, share =>
                progress.Show("film", share), cancellationToken);
            progress.Dispose();
            Write(film, finished, settings.Quiet);
        }

        return ExitCode.Ok;
    }

    private static RecordingSource Open(ViewSettings settings, CancellationToken cancellation)
    {
        var source = RecordingSource.Open(settings.Source, Environment.ProcessorCount);
        try
        {
            using var progress = new ProgressLine(settings.Quiet);
            source.Wait(share => progress.Show(source.Recording.Scenario.Name, share), cancellation);
        }
        catch
        {
            source.Dispose();
            throw;
        }

        TellComputed(source, settings);
        return source;
    }

    private static void TellComputed(RecordingSource source, ViewSettings settings)
    {
        if (!settings.Quiet && source.Running is not null)
            Console.Error.WriteLine(
                $"The season of {source.Recording.Scenario.Name} is computed at draft quality for this; "
                + "'canopysim season --record' keeps a finer one.");
    }

    private static int ShowWindow(ViewSettings settings, CancellationToken cancellation)
    {
        // One core stays with the window.
        var threads = Math.Max(1, Environment.ProcessorCount - 1);
        using var source = RecordingSource.Open(settings.Source, threads);
        TellComputed(source, settings);
        using var window = new GlfwWindow(WindowWidth, WindowHeight, $"{source.Recording.Scenario.Name} · CanopySim");
        using var trials = new TrialRunner(source.Recording, source.Folder, threads);
        using var screen = new ScreenModel(source.Recording, trials, settings.FirstState(source.Recording));
        if (settings.Options.From != ViewPoint.Along) screen.Look(settings.Options.From);
        var report = settings.Report is { } file ? new Action<ScreenModel>(of => WriteReport(file, of)) : null;
        ViewWindow.Run(window, screen, source.Running, report, cancellation);
        return cancellation.IsCancellationRequested ? ExitCode.Stopped : ExitCode.Ok;
    }

    // Whole or not at all, since another process reads it at any time.
    private static void WriteReport(string file, ScreenModel screen)
    {
        File.WriteAllText(file + ".unfinished", ScreenReport.Json(screen));
        File.Move(file + ".unfinished", file, overwrite: true);
    }

    private static int NumberOf(SeasonRecording recording, DateOnly? asked)
    {
        var days = Enumerable.Range(0, recording.DayCount);
        if (asked is not { } date) return days.MaxBy(day => recording.Row(day).LeafAreaM2PerVine);
        var (first, last) = (recording.Row(0).Date, recording.Row(recording.DayCount - 1).Date);
        return date >= first && date <= last
            ? days.First(day => recording.Row(day).Date == date)
            : throw new InputError(new InputPlace("--date"), $"{date:yyyy-MM-dd}, outside the season",
                $"a day from {first:yyyy-MM-dd} to {last:yyyy-MM-dd}");
    }

    private static void CheckTarget(string option, string? path, string ending)
    {
        if (path is null) return;
        if (!Path.GetExtension(path).Equals(ending, StringComparison.OrdinalIgnoreCase))
            throw new InputError(new InputPlace(option), InputError.Quote(path), $"a file name that ends in {ending}");
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        if (folder is not null && !Directory.Exists(folder))
            throw new InputError(new InputPlace(option), $"no folder {InputError.Quote(folder)}",
                "a file in a folder that exists");
    }

    // Whole or not at all.
    private static void Write(string path, FinishedPicture picture, bool quiet)
    {
        var unfinished = path + ".unfinished";
        File.WriteAllBytes(unfinished, picture.Bytes);
        File.Move(unfinished, path, overwrite: true);
        if (!quiet) Console.WriteLine(picture.Sentence);
    }
}
