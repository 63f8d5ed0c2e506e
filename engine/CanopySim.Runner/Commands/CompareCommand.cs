using System.ComponentModel;
using System.Runtime.ExceptionServices;
using CanopySim.Files;
using CanopySim.Files.Charts;
using CanopySim.Files.Comparison;
using CanopySim.Files.Results;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim compare</c>: the seasons of several scenarios side by side.</summary>
public sealed class CompareCommand : Command<CompareCommand.Settings>
{
    private const int LeastOptions = 2;
    private const int MostOptions = 12;
    private const int LongestFolder = 60;

    public sealed class Settings : ComputeSettings
    {
        // Not required to the parser: what is missing is said by us, with what to do.
        [CommandArgument(0, "[SCENARIO]")]
        [Description("The scenario files, 2 to 12; differences are told against the first.")]
        public string[] All { get; init; } = [];
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var (quality, units, threads) = (settings.Quality, settings.Units, settings.ThreadCount);
        CheckNumber(settings.All);
        Rehearsal.Begin(threads, quality);
        var inputs = settings.All.Select(path => SeasonInput.Read(path, settings.Overrides)).ToList();
        var names = OptionNames.Of([.. inputs.Select(input => (input.Document.Scenario.Name, input.Document.Path))]);
        var folders = OptionNames.FoldersOf(names);
        foreach (var twins in ScenarioDifferences.Twins([.. inputs.Select(input => input.Document)], names))
            Console.Error.WriteLine($"canopysim: {twins}");
        using var folder = ResultsFolder.Begin(settings.Out ?? DefaultFolder(settings.All));
        IReadOnlyList<FinishedOption> finished;
        using (var progress = new ProgressLine(settings.Quiet))
        {
            var run = new ComparedSeasons(inputs, names, quality, threads, progress, cancellationToken);
            finished = run.Run((option, result) =>
                SeasonOutput.WriteTablesAndCharts(InFolder(option), inputs[option], result, units));
        }

        List<ComparedOption> options = [.. finished.Select((one, i) =>
            new ComparedOption(names[i], inputs[i].Document, one.Season))];
        var drawing = CanopyPerspectives.Begin(
            [.. options.Select((option, i) => SeasonOutput.Kept(inputs[i], option.Season))]);
        var frame = CanopyPictures.FrameOf(
            options.Where(option => option.Season.Portrait is not null)
            .Select(option => (option.Season.Portrait!, option.Scenario)));
        var views = new IReadOnlyList<ChartPicture>[options.Count];
        IReadOnlyList<CanopyPerspective> perspectives = [];
        IReadOnlyList<ChartPicture> charts = [];
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellationToken };
        try
        {
            Parallel.For(0, options.Count + 1, parallel, item =>
            {
                if (item == 0)
                {
                    charts = ComparisonCharts.All(options, units);
                    return;
                }

                var i = item - 1;
                views[i] = CanopyPictures.All(options[i].Season.Portrait, options[i].Scenario, frame, units);
            });
            perspectives = drawing.GetAwaiter().GetResult();
            Parallel.For(0, options.Count, parallel, i => SeasonOutput.WriteReport(
                InFolder(i), inputs[i], options[i].Season, units, finished[i].Charts, views[i], perspectives[i]));
        }
        catch (AggregateException many)
        {
            // One error has its own message; that there were several at once says nothing more.
            ExceptionDispatchInfo.Throw(many.InnerExceptions[0]);
        }

        SeasonOutput.WritePictures(folder.File, charts);
        CompareCsv.Write(
            folder.File(CompareCsv.FileName),
            [.. options.Select((option, i) => (option.Name, File.ReadAllText(InFolder(i)(SummaryJson.FileName))))]);
        File.WriteAllText(
            folder.File("report.html"),
            ComparisonPage.Html(new ComparisonReport(options, charts, views, units,
                DateOnly.FromDateTime(DateTime.Now))
            { Perspectives = perspectives }));
        SummaryJson.WriteBrief(folder.File(SummaryJson.FileName), names[0], "compare");
        folder.Commit();
        CanopyPerspectives.TellMissing(perspectives);
        if (!settings.Quiet) Tell(options, units, settings.Out ?? DefaultFolder(settings.All));
        return RunnerApp.Ok;

        Func<string, string> InFolder(int option) => name => folder.File($"{folders[option]}/{name}");
    }

    private static void CheckNumber(IReadOnlyList<string> paths)
    {
        if (paths.Count is < LeastOptions or > MostOptions)
        {
            var found = paths.Count switch
            {
                0 => "no scenario",
                1 => $"one scenario, {InputError.Quote(paths[0])}",
                var count => $"{count} scenarios",
            };
            var advice = paths.Count < LeastOptions
                ? "name another file behind it, as in: canopysim compare hedge.yaml curtain.yaml"
                : "leave some out, or compare them in groups with the same first one";
            throw new InputError(
                new InputPlace("compare"), found, $"{LeastOptions} to {MostOptions} scenario files; {advice}");
        }

        var twice = paths.GroupBy(Path.GetFullPath).FirstOrDefault(same => same.Count() > 1);
        if (twice is not null)
        {
            throw new InputError(
                new InputPlace("compare"), $"the same file twice, {InputError.Quote(twice.First())}",
                "different scenarios: two that say the same do not differ; leave one out, or change it in a copy");
        }
    }

    /// <summary>Named after all scenarios, or after the first and how many more where that is too long.</summary>
    private static string DefaultFolder(IReadOnlyList<string> paths)
    {
        var all = $"compare-{string.Join('-', paths.Select(OptionNames.StemOf))}";
        return Path.Combine("results", all.Length <= LongestFolder
            ? all
            : $"compare-{OptionNames.StemOf(paths[0])}-and-{paths.Count - 1}-more");
    }

    private static void Tell(IReadOnlyList<ComparedOption> options, Units units, string folder)
    {
        foreach (var line in ComparisonText.Lines(options, units, WidthOfTerminal())) Console.WriteLine(line);
        Console.WriteLine();
        Console.WriteLine($"A folder for each option, compare.csv and report.html are in {folder}.");
    }

    // A pipe or a file gets what fits everywhere.
    private static int WidthOfTerminal() =>
        Console.IsOutputRedirected ? ComparisonText.Width : Math.Max(ComparisonText.Width, Console.WindowWidth);
}
