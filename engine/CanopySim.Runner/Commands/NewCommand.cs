using System.ComponentModel;
using CanopySim.Files;
using CanopySim.Files.Notes;
using CanopySim.Files.Scenarios;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim new</c>: a scenario, or a sheet of field notes, to start from.</summary>
public sealed class NewCommand : Command<NewCommand.Settings>
{
    public sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("The file to write; it must not exist.")]
        public string File { get; init; } = "";

        [CommandOption("--notes")]
        [Description("Writes an empty sheet of field notes that says how each thing is measured, instead of a scenario.")]
        public bool Notes { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var place = new InputPlace(settings.File);
        if (File.Exists(settings.File) || Directory.Exists(settings.File))
            throw new InputError(place, "something of that name", "a name that is free: nothing is overwritten");
        var folder = Path.GetDirectoryName(Path.GetFullPath(settings.File))!;
        Directory.CreateDirectory(folder);
        using (var stream = new FileStream(settings.File, FileMode.CreateNew))
        using (var writer = new StreamWriter(stream))
            writer.Write(settings.Notes ? NotesSheet.Empty() : ScenarioFile.Starter());
        if (settings.Notes)
        {
            Console.WriteLine($"{settings.File} is there: it says how to measure, and waits for your first line.");
            return RunnerApp.Ok;
        }

        Console.WriteLine($"{settings.File} is there. Put your weather beside it, fill in site, rows and season, then "
            + $"run: canopysim check {settings.File}");
        return RunnerApp.Ok;
    }
}
