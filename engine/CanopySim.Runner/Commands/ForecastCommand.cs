using System.ComponentModel;
using CanopySim.Files;
using CanopySim.Files.Comparison;
using CanopySim.Files.Forecast;
using CanopySim.Files.Results;
using CanopySim.Fitting;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim forecast</c>: the vines fitted to field notes, and what is coming, with a range.</summary>
public sealed class ForecastCommand : Command<ForecastCommand.Settings>
{
    public sealed class Settings : OneScenarioSettings
    {
        [CommandOption("--notes <FILE>")]
        [Description("The field notes; 'canopysim new --notes FILE' writes an empty sheet.")]
        public string? Notes { get; init; }

        [CommandOption("--as-of <DATE>")]
        [Description("The day from which it looks ahead; by default the last one of the weather, or of the notes where "
            + "the weather goes on for more than three weeks after them. Nothing later is used.")]
        public string? AsOf { get; init; }

        [CommandOption("--outlook <WEATHER>")]
        [Description("Weather that is expected from the next day on, a file as the scenario's weather is.")]
        public string? Outlook { get; init; }

        [CommandOption("--members <N>")]
        [Description("Vines of the ensemble, 20 to 1000; 100 by default.")]
        public string? Members { get; init; }

        [CommandOption("--options <N>")]
        [Description("On how many of them what can still be done is tried, 0 to 100; 6 by default, 0 for not at all.")]
        public string? Options { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var (units, threads) = (settings.Units, settings.ThreadCount);
        if (settings.Notes is null)
        {
            throw new InputError(
                new InputPlace("forecast"), "no --notes",
                "the file of field notes; 'canopysim new --notes notes.csv' writes an empty sheet");
        }

        var members = NumberOption.Whole(settings.Members, "--members", 20, 1000) ?? new ForecastOptions().Members;
        var tried = NumberOption.Whole(settings.Options, "--options", 0, 100) ?? new ForecastOptions().MembersOfOption;
        var asOf = settings.AsOf is { } day ? DateText.Read(day, "--as-of") : (DateOnly?)null;
        var input = ForecastInput.Read(settings.Scenario, settings.Overrides, settings.Notes, asOf, settings.Outlook);
        using var folder = ResultsFolder.Begin(settings.OutFolder(settings.Scenario));
        ForecastReport report;
        using (var progress = new ProgressLine(settings.Quiet))
        {
            var weather = new WeatherAhead(
                input.Known, input.Record, input.Scenario, input.UtcOffsetHours, input.LastDay, input.Scenario.Seed);
            report = new ForecastReport(input, VineForecast.Make(
                input.Scenario, input.Known, weather, input.UtcOffsetHours, input.AsOf, input.Noted.Observations,
                new ForecastOptions
                {
                    Members = members,
                    MembersOfOption = Math.Min(tried, members),
                    StandingQuality = settings.Quality,
                    Seed = input.Scenario.Seed,
                    Threads = threads,
                    Progress = (done, all) => progress.Show($"{done} of {all} seasons done", done / (double)all),
                    Cancellation = cancellationToken,
                }));
        }

        var content = ForecastContents.Of(report, units, DateOnly.FromDateTime(DateTime.Now));
        var charts = ForecastCharts.All(content);
        SeasonOutput.WritePictures(folder.File, charts);
        File.WriteAllText(folder.File(ForecastPage.FileName), ForecastPage.Html(content, charts));
        File.WriteAllText(folder.File(ForecastJson.FileName), ForecastJson.Text(report));
        SummaryJson.WriteBrief(
            folder.File(SummaryJson.FileName), input.Scenario.Name, "forecast", InputHashes.Of(input.Document));
        folder.Commit();
        if (settings.Quiet) return RunnerApp.Ok;
        foreach (var line in ForecastText.Lines(report, content, WidthOfTerminal())) Console.WriteLine(line);
        Console.WriteLine();
        Console.WriteLine($"forecast.json and forecast.html are in {folder.Target}.");
        return RunnerApp.Ok;
    }

    // A pipe or a file gets what fits everywhere.
    private static int WidthOfTerminal() =>
        Console.IsOutputRedirected ? ComparisonText.Width : Math.Max(ComparisonText.Width, Console.WindowWidth);
}
