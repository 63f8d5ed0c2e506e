using System.ComponentModel;
using CanopySim.Files;
using CanopySim.Files.Batch;
using CanopySim.Files.Report;
using CanopySim.Files.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim check</c>: what was understood, and how sure each value is.</summary>
public sealed class CheckCommand : Command<CheckCommand.Settings>
{
    private const int WidthOfFiles = 2000;

    public sealed class Settings : ScenarioSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("Scenario or plan files.")]
        public string[] Files { get; init; } = [];
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        // A file or a pipe has no width: one line a value, so that it can be searched.
        if (Console.IsOutputRedirected) AnsiConsole.Profile.Width = WidthOfFiles;
        foreach (var file in settings.Files)
        {
            if (PlanFile.IsPlan(file))
            {
                PlanUnderstood.Print(file);
                continue;
            }

            var input = SeasonInput.Read(file, settings.Overrides);
            var calendar = SeasonCalendar.Of(input.Document.Scenario, input.Weather);
            var days = input.Weather.Days;
            Console.WriteLine($"{file}: {input.Document.Scenario.Name}");
            Console.WriteLine($"weather {days[0].Date:yyyy-MM-dd} to {days[^1].Date:yyyy-MM-dd}, {days.Count} days; "
                + $"season of {calendar.Year}; clock UTC{input.UtcOffsetHours:+0.##;-0.##;+0} h, standard time");
            Console.WriteLine("estimated: "
                + $"{(input.Weather.EstimatedInputs.Count > 0 ? string.Join(
                ", ", input.Weather.EstimatedInputs) : "nothing")}; gaps filled: {input.Weather.FilledGaps}");
            foreach (var sentence in TrellisSentences.Of(input.Document.Scenario)) Console.WriteLine(sentence);
            if (TrellisSentences.Unused(
                input.Document.Scenario, input.Document.KeysWithoutUse) is { Length: > 0 } unused) Console.WriteLine(
                unused);
            PrintValues(input.Document.Values);
        }

        return RunnerApp.Ok;
    }

    /// <summary>Key, value, mark and source, line by line.</summary>
    public static void PrintValues(IEnumerable<UnderstoodValue> values)
    {
        var table = new Table().Border(TableBorder.None)
            .AddColumn("key", column => column.NoWrap()).AddColumns("value", "mark", "source");
        foreach (var value in values)
            table.AddRow(
                Markup.Escape(value.Key), Markup.Escape(value.Value), MarkWords.Of(value.Mark),
                Markup.Escape(value.Source));
        AnsiConsole.Write(table);
    }
}
