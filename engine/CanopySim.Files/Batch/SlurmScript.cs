using System.Globalization;
using System.Text;

namespace CanopySim.Files.Batch;

/// <summary>What a job array of a batch is made of.</summary>
public sealed record SlurmJob
{
    /// <summary>Name of the plan: the jobs are named so.</summary>
    public required string Name { get; init; }

    /// <summary>The program and what comes before its own arguments: canopysim, or dotnet and the program's file.</summary>
    public required IReadOnlyList<string> Program { get; init; }

    /// <summary>The plan file, as a full path.</summary>
    public required string Plan { get; init; }

    /// <summary>Folder of the batch, as a full path.</summary>
    public required string Folder { get; init; }

    /// <summary>In how many parts the plan is cut.</summary>
    public required int Tasks { get; init; }

    /// <summary>The parts that are to be grown: 0-3,7.</summary>
    public required string Array { get; init; }

    /// <summary>Options of the user's for both jobs, as --account=vines.</summary>
    public IReadOnlyList<string> Options { get; init; } = [];
}

/// <summary>Writes the scripts of a Slurm job array and of the merge that follows it.</summary>
public static class SlurmScript
{
    // Long enough for seasons that grow to be finished before the time limit [s].
    private const int SecondsToFinish = 120;

    /// <summary>The script of the array: each task grows the shards of one part.</summary>
    public static string Array(SlurmJob job)
    {
        var text = Head(job, job.Name, $"{job.Name}-%A_%a.log");
        text.Append("#SBATCH --array=").Append(job.Array).Append('\n');
        text.Append("#SBATCH --requeue\n");
        // A signal to the script's own process, which is the program's from the last line on.
        text.Append(CultureInfo.InvariantCulture, $"#SBATCH --signal=B:TERM@{SecondsToFinish}\n");
        AppendOptions(text, job);
        AppendCommand(
            text, job, "run", "--task", "\"$SLURM_ARRAY_TASK_ID\"", "--tasks", job.Tasks.ToString(CultureInfo.InvariantCulture));
        return text.ToString();
    }

    /// <summary>The script of the merge; it checks by itself whether all shards are there.</summary>
    public static string Merge(SlurmJob job)
    {
        var text = Head(job, $"{job.Name}-merge", $"{job.Name}-merge-%j.log");
        text.Append("#SBATCH --requeue\n");
        AppendOptions(text, job);
        AppendCommand(text, job, "merge");
        return text.ToString();
    }

    /// <summary>Numbers as an array names them: 0-3,7.</summary>
    public static string Ranges(IReadOnlyList<int> rising)
    {
        var parts = new List<string>();
        for (var from = 0; from < rising.Count;)
        {
            var to = from;
            while (to + 1 < rising.Count && rising[to + 1] == rising[to] + 1) to++;
            parts.Add(from == to
                ? string.Create(CultureInfo.InvariantCulture, $"{rising[from]}")
                : string.Create(CultureInfo.InvariantCulture, $"{rising[from]}-{rising[to]}"));
            from = to + 1;
        }

        return string.Join(',', parts);
    }

    /// <summary>
    /// How many tasks: each takes about so many minutes, none is empty, and the array stays within the cluster's limit.
    /// </summary>
    /// <param name="shards">Shards of the plan.</param>
    /// <param name="minutesOfShard">Minutes that a shard takes on the cores of a task.</param>
    /// <param name="minutes">Minutes that a task should take.</param>
    /// <param name="largestArray">The cluster's MaxArraySize: indices stay below it.</param>
    public static int Tasks(int shards, double minutesOfShard, double minutes, int largestArray)
    {
        var shardsInTask = Math.Max(1, Math.Round(minutes / minutesOfShard));
        return (int)Math.Min(Math.Ceiling(shards / shardsInTask), Math.Min(shards, largestArray));
    }

    /// <summary>Cores of a task by the user's options; 1 where they say nothing.</summary>
    public static int CoresIn(IReadOnlyList<string> options)
    {
        for (var i = 0; i < options.Count; i++)
        {
            var value = options[i] switch
            {
                var option when option.StartsWith("--cpus-per-task=", StringComparison.Ordinal) => option["--cpus-per-task=".Length..],
                "--cpus-per-task" or "-c" when i + 1 < options.Count => options[i + 1],
                ['-', 'c', .. var rest] when rest.Length > 0 => rest,
                _ => "",
            };
            if (int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var cores) && cores > 0) return cores;
        }

        return 1;
    }

    private static StringBuilder Head(SlurmJob job, string name, string log) => new StringBuilder("#!/bin/bash\n")
        .Append("#SBATCH --job-name=").Append(name).Append('\n')
        .Append("#SBATCH --output=").Append(Quoted(Path.Combine(job.Folder, "slurm", log))).Append('\n')
        .Append("#SBATCH --open-mode=append\n");

    private static void AppendOptions(StringBuilder text, SlurmJob job)
    {
        for (var i = 0; i < job.Options.Count; i++)
        {
            text.Append("#SBATCH ").Append(job.Options[i]);
            // An option and its value in two words.
            if (job.Options[i].StartsWith('-') && i + 1 < job.Options.Count && !job.Options[i + 1].StartsWith('-'))
                text.Append(' ').Append(job.Options[++i]);
            text.Append('\n');
        }
    }

    private static void AppendCommand(StringBuilder text, SlurmJob job, string command, params string[] more)
    {
        text.Append("# The program takes the place of this shell, so that signals reach it.\nexec");
        foreach (var word in job.Program) text.Append(' ').Append(Quoted(word));
        text.Append(" batch ").Append(command).Append(' ').Append(Quoted(job.Plan)).Append(" --out ").Append(Quoted(job.Folder));
        foreach (var word in more) text.Append(' ').Append(word);
        text.Append('\n');
    }

    private static string Quoted(string word) =>
        word.Length > 0 && word.All(letter => char.IsAsciiLetterOrDigit(letter) || "/._-+=:%,@".Contains(letter, StringComparison.Ordinal))
            ? word
            : $"'{word.Replace("'", "'\\''", StringComparison.Ordinal)}'";
}
