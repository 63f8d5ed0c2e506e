using CanopySim.Drawing.Gl;
using CanopySim.Drawing.Painting;
using CanopySim.Drawing.Pictures;
using CanopySim.Files;
using CanopySim.Files.Recording;
using Spectre.Console.Cli;

namespace CanopySim.Viewer.Commands;

/// <summary><c>canopysim-view</c>: a picture, a film, or the window.</summary>
public sealed class ViewCommand : Command<ViewSettings>
{
    public override int Execute(CommandContext context, ViewSettings settings, CancellationToken cancellationToken)
    {
        // The command line is read whole before a season is computed for it.
        var (options, quantity, hour, day, isOfDay) = (settings.Options, settings.Quantity, settings.Hour, settings.Day, settings.IsOfDay);
        CheckTarget("--picture", settings.Picture, ".png");
        CheckTarget("--film", settings.Film, ".gif");
        using var recording = Open(settings, cancellationToken);
        if (settings.Picture is null && settings.Film is null) return ViewWindow.Open(recording, settings);
        var number = NumberOf(recording, day);
        using var gl = EglContext.Create();
        if (settings.Picture is { } picture)
        {
            using var canopy = new CanopyPicture(gl, recording, options);
            Write(picture, canopy.Png(new Moment(number, hour, quantity)), settings.Quiet);
        }

        if (settings.Film is { } film)
        {
            var moments = isOfDay ? CanopyFilm.OfDay(recording, quantity, number) : CanopyFilm.OfSeason(recording, quantity, hour);
            if (moments.Count == 0)
                throw new InputError(new InputPlace("--film"), "a season or a day without leaves", "one on which leaves are in the light");
            using var progress = new ProgressLine(settings.Quiet);
            var finished = CanopyFilm.Gif(gl, recording, moments, options, share => progress.Show("film", share), cancellationToken);
            progress.Dispose();
            Write(film, finished, settings.Quiet);
        }

        return ViewerApp.Ok;
    }

    private static SeasonRecording Open(ViewSettings settings, CancellationToken cancellation)
    {
        using var progress = new ProgressLine(settings.Quiet);
        var recording = RecordingSource.Open(settings.Source, (date, share) => progress.Show($"{date:d MMM yyyy}", share), cancellation);
        progress.Dispose();
        if (!settings.Quiet && RecordingSource.IsScenario(settings.Source))
            Console.Error.WriteLine($"The season of {recording.Scenario.Name} was computed at draft quality for this; 'canopysim season --record' keeps a finer one.");
        return recording;
    }

    private static int NumberOf(SeasonRecording recording, DateOnly? asked)
    {
        var days = Enumerable.Range(0, recording.DayCount);
        if (asked is not { } date) return days.MaxBy(day => recording.Row(day).LeafAreaM2PerVine);
        var (first, last) = (recording.Row(0).Date, recording.Row(recording.DayCount - 1).Date);
        return date >= first && date <= last
            ? days.First(day => recording.Row(day).Date == date)
            : throw new InputError(new InputPlace("--date"), $"{date:yyyy-MM-dd}, outside the season", $"a day from {first:yyyy-MM-dd} to {last:yyyy-MM-dd}");
    }

    private static void CheckTarget(string option, string? path, string ending)
    {
        if (path is null) return;
        if (!Path.GetExtension(path).Equals(ending, StringComparison.OrdinalIgnoreCase))
            throw new InputError(new InputPlace(option), InputError.Quote(path), $"a file name that ends in {ending}");
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        if (folder is not null && !Directory.Exists(folder))
            throw new InputError(new InputPlace(option), $"no folder {InputError.Quote(folder)}", "a file in a folder that exists");
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
