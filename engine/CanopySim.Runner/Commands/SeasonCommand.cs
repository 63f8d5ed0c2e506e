using System.ComponentModel;
using System.Diagnostics;
using CanopySim.Files;
using CanopySim.Files.Charts;
using CanopySim.Files.Recording;
using CanopySim.Files.Report;
using CanopySim.Files.Results;
using CanopySim.Results;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim season</c>: one season into a results folder.</summary>
public sealed class SeasonCommand : Command<SeasonCommand.Settings>
{
    public sealed class Settings : OneScenarioSettings
    {
        [CommandOption("--until <DATE>")]
        [Description("Last day that is simulated.")]
        public string? Until { get; init; }

        [CommandOption("--leaves-on <DATE>")]
        [Description("A day whose leaves are listed one by one in leaves.csv; may be repeated. The last day is listed "
            + "always.")]
        public string[] LeavesOn { get; init; } = [];

        [CommandOption("--record")]
        [Description("Writes season.bin too: every leaf in every hour, for canopysim-view.")]
        public bool Record { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var (quality, units, threads) = (settings.Quality, settings.Units, settings.ThreadCount);
        Rehearsal.Begin(threads, quality);
        var until = settings.Until is { } text ? DateText.Read(text, "--until") : (DateOnly?)null;
        var leavesOn = settings.LeavesOn.Select(day => DateText.Read(day, "--leaves-on")).ToList();
        var input = SeasonInput.Read(settings.Scenario, settings.Overrides);
        var calendar = SeasonCalendar.Of(input.Document.Scenario, input.Weather);
        if (until is { } last) CheckInSeason(last, "--until", calendar);
        foreach (var day in leavesOn) CheckInSeason(day, "--leaves-on", calendar);
        using var folder = ResultsFolder.Begin(settings.OutFolder(settings.Scenario));
        using var file = settings.Record ? new FileBlockWriter(folder.File(RecordingWriter.FileName)) : null;
        var recording = file is null
            ? null
            : new RecordingWriter(
                file, input.Document.Scenario, input.Weather, input.UtcOffsetHours, quality, InputHashes.Of(input.Document));
        var watch = Stopwatch.StartNew();
        SeasonResult result;
        using (var progress = new ProgressLine(settings.Quiet))
        {
            result = Simulation.Run(input.Document.Scenario, input.Weather, input.UtcOffsetHours, new SeasonOptions
            {
                Quality = quality,
                Threads = threads,
                Until = until,
                LeavesOn = leavesOn,
                Seconds = () => watch.Elapsed.TotalSeconds,
                Progress = progress.Show,
                Cancellation = cancellationToken,
                Recorder = recording is null ? null : recording.Add,
            });
        }

        recording?.Finish(result);
        file?.Finish();
        file?.Dispose();

        var scenario = input.Document.Scenario;
        var perspectives = CanopyPerspectives.Begin([SeasonOutput.Kept(input, result)]);
        var charts = SeasonOutput.WriteTablesAndCharts(folder.File, input, result, units, threads);
        var frame = result.Portrait is { } portrait ? CanopyPictures.FrameOf([(portrait, scenario)]) : 0;
        var views = CanopyPictures.All(result.Portrait, scenario, frame, units);
        var perspective = perspectives.GetAwaiter().GetResult()[0];
        SeasonOutput.WriteReport(folder.File, input, result, units, charts, views, perspective);
        folder.Commit();
        CanopyPerspectives.TellMissing([perspective]);
        if (!settings.Quiet) Tell(result, scenario, units, settings.OutFolder(settings.Scenario));
        return RunnerApp.Ok;
    }

    // A day of another year would end the season before it began, in silence.
    private static void CheckInSeason(DateOnly day, string option, SeasonCalendar calendar)
    {
        if (day < calendar.HeatFrom || day > calendar.LastDay)
            throw new InputError(
                new InputPlace(option), $"{day:yyyy-MM-dd}, outside the season",
                $"a day from {calendar.HeatFrom:yyyy-MM-dd} to {calendar.LastDay:yyyy-MM-dd}");
    }

    private static void Tell(SeasonResult result, Scenario scenario, Units units, string folder)
    {
        Console.WriteLine(SeasonSentences.Opening(result, units));
        Console.WriteLine(SeasonSentences.Ripeness(result, scenario.Season.TargetSugar));
        var summary = result.Summary;
        if (summary.EstimatedInputs.Count > 0) Console.WriteLine(
            $"Estimated, not measured: {string.Join(", ", summary.EstimatedInputs)}.");
        if (summary.FilledGaps > 0) Console.WriteLine($"Gaps in the weather that were filled: {summary.FilledGaps}.");
        foreach (var warning in summary.Warnings) Console.WriteLine($"Not as planned: {warning}");
        foreach (var caution in summary.Cautions) Console.WriteLine(caution);
        using var self = Process.GetCurrentProcess();
        var inAll = (DateTime.UtcNow - self.StartTime.ToUniversalTime()).TotalSeconds;
        Console.WriteLine(
            $"{summary.Seconds.Total:0.0} s for the season at {summary.Quality} quality, {inAll:0.0} s in all. "
                + $"Results, charts and report.html are in {folder}.");
    }
}
