using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using CanopySim.Files;
using CanopySim.Files.Batch;
using Spectre.Console.Cli;

namespace CanopySim.Runner.Commands;

/// <summary><c>canopysim batch submit</c>: a Slurm job array for what is to be grown, and a merge after it.</summary>
public sealed class BatchSubmitCommand : Command<BatchSubmitCommand.Settings>
{
    public const string SlurmOption = "--slurm";

    private const double MinutesOfTask = 15;

    // Slurm's own default, where the cluster does not say.
    private const int UsualMaxArraySize = 1001;

    public sealed class Settings : BatchSettings
    {
        [CommandOption("--slurm <OPTIONS>")]
        [Description("Options of sbatch for both jobs, as \"--account=vines --time=1:00:00 --cpus-per-task=4\"; may be repeated.")]
        public string[] Slurm { get; init; } = [];

        [CommandOption("--minutes <N>")]
        [Description("About how long a task should take: 5 to 30, 15 by default.")]
        public string? Minutes { get; init; }

        [CommandOption("--tasks <N>")]
        [Description("Number of tasks, in place of --minutes; no more than there are shards.")]
        public string? Tasks { get; init; }

        [CommandOption("--dry-run")]
        [Description("Prints the scripts and submits nothing.")]
        public bool DryRun { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var minutes = NumberOption.Read(settings.Minutes, "--minutes", 5, 30) ?? MinutesOfTask;
        List<string> options = [.. settings.Slurm.SelectMany(option => option.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
        var batch = OpenBatch.Read(settings);
        var shards = batch.Items.Shards;
        var found = Enumerable.Range(1, shards).Select(batch.Folder.Find).ToList();
        var asked = NumberOption.Whole(settings.Tasks, "--tasks", 1, int.MaxValue);
        var tasks = asked is { } number
            ? Math.Min(number, Math.Min(shards, MaxArraySize()))
            : SlurmScript.Tasks(shards, MinutesOfShard(batch, found) / SlurmScript.CoresIn(options), minutes, MaxArraySize());
        var open = Enumerable.Range(0, tasks)
            .Where(task => TaskShards.Of(task, tasks, shards).Any(shard => found[shard - 1].State != ShardState.Complete)).ToList();
        var job = new SlurmJob
        {
            Name = batch.Plan.Name,
            Program = Program(),
            Plan = Path.GetFullPath(settings.Plan),
            Folder = Path.GetFullPath(batch.Folder.Path),
            Tasks = tasks,
            Array = SlurmScript.Ranges(open),
            Options = options,
        };
        if (settings.DryRun)
        {
            if (open.Count > 0) Console.Write(SlurmScript.Array(job));
            Console.Write(SlurmScript.Merge(job));
            return RunnerApp.Ok;
        }

        batch.Folder.Prepare();
        Directory.CreateDirectory(Path.Combine(job.Folder, "slurm"));
        string? array = null;
        if (open.Count > 0)
        {
            array = Submit(Script("array.sh", SlurmScript.Array(job)));
            Console.WriteLine($"job {array}: {open.Count} tasks of {tasks}");
        }
        else
        {
            Console.WriteLine("all shards are complete; only the merge is submitted");
        }

        // Not afterok: a merge after a task that failed would wait for ever.
        var merge = Submit(
            [.. array is null ? (string[])[] : [$"--dependency=afterany:{array}"], .. Script("merge.sh", SlurmScript.Merge(job))]);
        Console.WriteLine($"job {merge}: the merge; 'canopysim batch status {settings.Plan}' tells how far it is");
        return RunnerApp.Ok;

        string[] Script(string name, string text)
        {
            var path = Path.Combine(job.Folder, "slurm", name);
            DurableFile.Publish(path, System.Text.Encoding.UTF8.GetBytes(text));
            return [path];
        }
    }

    // By what the shards took that are done, else by what a season of that quality took elsewhere.
    private static double MinutesOfShard(OpenBatch batch, IReadOnlyList<FoundShard> found)
    {
        var complete = found.Where(one => one.State == ShardState.Complete).Select(one => one.Manifest!).ToList();
        var seasons = complete.Sum(manifest => manifest.LastItem - manifest.FirstItem + 1);
        var seconds = complete.Sum(manifest => manifest.Seconds);
        var secondsOfSeason = seasons > 0 && seconds > 0 ? seconds / seasons : PlanFile.SecondsOfSeason(batch.Plan.Quality);
        return batch.Plan.ItemsPerShard * secondsOfSeason / 60;
    }

    private static IReadOnlyList<string> Program()
    {
        var process = Environment.ProcessPath!;
        var isHost = Path.GetFileNameWithoutExtension(process) == "dotnet";
        return isHost ? [process, Path.Combine(AppContext.BaseDirectory, "canopysim.dll")] : [process];
    }

    private static int MaxArraySize()
    {
        try
        {
            var line = Call("scontrol", "show", "config").Split('\n')
                .FirstOrDefault(line => line.StartsWith("MaxArraySize", StringComparison.Ordinal));
            return int.TryParse(line?.Split('=')[^1], NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var size) && size > 0
                ? size
                : UsualMaxArraySize;
        }
        catch (InputError)
        {
            return UsualMaxArraySize;
        }
    }

    private static string Submit(string[] arguments) => Call("sbatch", ["--parsable", .. arguments]).Trim().Split(';')[0];

    private static string Call(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        try
        {
            using var process = Process.Start(start)!;
            var error = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0
                ? output
                : throw new InputError(new InputPlace(program), $"exit code {process.ExitCode} ({error.Result.Trim()})", "options that the cluster takes");
        }
        catch (System.ComponentModel.Win32Exception)
        {
            throw new InputError(new InputPlace(program), "no such program here", "a machine that submits to Slurm; --dry-run prints the scripts anywhere");
        }
    }
}
