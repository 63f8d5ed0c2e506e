using System.ComponentModel;
using System.Globalization;
using CanopySim.Files;
using CanopySim.Files.Batch;
using Spectre.Console;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim batch ask</c>: SQL over the merged tables.</summary>
public sealed class BatchAskCommand : Command<BatchAskCommand.Settings>
{
    private const int WidthOfFiles = 2000;

    public sealed class Settings : BatchSettings
    {
        [CommandArgument(1, "<SQL>")]
        [Description("One SELECT over the tables seasons and courses.")]
        public string Sql { get; init; } = "";

        [CommandOption("--csv")]
        [Description("Prints CSV with every digit.")]
        public bool Csv { get; init; }

        [CommandOption("--threads <N>")]
        [Description("Most threads; all cores by default.")]
        public string? Threads { get; init; }

        [CommandOption("--memory <MB>")]
        [Description("Most memory in MB; 2000 by default.")]
        public string? Memory { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var threads = NumberOption.Whole(settings.Threads, "--threads", 1, 1024) ?? OpenBatch.CoresOfTask;
        var memory = NumberOption.Whole(settings.Memory, "--memory", 100, 10_000_000) ?? 2000;
        var batch = OpenBatch.Read(settings);
        switch (Provenance.Of(batch.Folder.Merged))
        {
            case null:
                throw new InputError(
                    new InputPlace("batch ask"), $"no merged tables in {InputError.Quote(batch.Folder.Merged)}",
                    $"a batch that was merged: canopysim batch merge {settings.Plan}");
            case var (plan, _) when plan != batch.Hashes.Plan:
                Console.Error.WriteLine("canopysim: the tables were merged from an earlier state of the plan; merge again for this one");
                break;
            case (_, > 0 and var missing):
                Console.Error.WriteLine(string.Create(
                    CultureInfo.InvariantCulture, $"canopysim: the tables were merged when {missing} shards were missing; merge again for all"));
                break;
        }

        try
        {
            using var query = new BatchQuery(batch.Folder.Merged, batch.Seasons.Schema, threads, memory);
            var result = query.Ask(settings.Sql, cancellationToken);
            if (settings.Csv) PrintCsv(result);
            else PrintTable(result);
            return RunnerApp.Ok;
        }
        catch (QueryException error)
        {
            Console.Error.WriteLine($"canopysim: {error.Message}");
            return RunnerApp.BadInput;
        }
    }

    private static void PrintTable(QueryResult result)
    {
        if (Console.IsOutputRedirected) AnsiConsole.Profile.Width = WidthOfFiles;
        var table = new Table().Border(TableBorder.Simple);
        foreach (var column in result.Columns) table.AddColumn(Markup.Escape(column));
        foreach (var row in result.Rows) table.AddRow([.. row.Select(cell => Markup.Escape(Short(cell)))]);
        AnsiConsole.Write(table);
    }

    private static string Short(string? cell) =>
        cell is not null && cell.Contains('.', StringComparison.Ordinal)
            && double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? number.ToString("G6", CultureInfo.InvariantCulture)
            : cell ?? "";

    private static void PrintCsv(QueryResult result)
    {
        Console.WriteLine(string.Join(',', result.Columns.Select(Quoted)));
        foreach (var row in result.Rows) Console.WriteLine(string.Join(',', row.Select(Quoted)));
    }

    private static string Quoted(string? cell) => cell is null ? ""
        : cell.AsSpan().IndexOfAny(",\"\n\r") >= 0 ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
        : cell;
}
