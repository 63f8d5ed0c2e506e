using System.Diagnostics;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>What a run of the program left: its exit code and what it printed.</summary>
internal sealed record RunnerOutcome(int ExitCode, string Output, string Error)
{
    /// <summary>The error stream, but for the line on pictures where this machine draws none.</summary>
    public string Complaints => PictureMachine.CanDraw ? Error
        : string.Concat(Error.Split('\n').Where(line => !line.Contains(PictureMachine.Missing)));

    public string[] ErrorLines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Everything, for the message of a test that failed.</summary>
    public override string ToString() => $"exit code {ExitCode}\nstdout: {Output}\nstderr: {Error}";
}

/// <summary>Runs the program as its users do: a process of its own, in a folder of its own.</summary>
internal static class RunnerProcess
{
    private static readonly TimeSpan LongestRun = TimeSpan.FromMinutes(5);

    public static string Repository { get; } = FindRepository();

    public static string FirstSeason { get; } = Path.Combine(Repository, "scenarios", "first-season", "scenario.yaml");

    public static RunnerOutcome Run(string workingFolder, params string[] arguments) => Run(workingFolder, _ => { }, arguments);

    /// <param name="workingFolder">Where the program runs.</param>
    /// <param name="whenStarted">Called once with the process that runs.</param>
    /// <param name="arguments">The command line.</param>
    public static RunnerOutcome Run(string workingFolder, Action<Process> whenStarted, params string[] arguments) =>
        Run(workingFolder, new Dictionary<string, string>(), whenStarted, arguments);

    /// <param name="workingFolder">Where the program runs.</param>
    /// <param name="environment">Variables of its own.</param>
    /// <param name="whenStarted">Called once with the process that runs.</param>
    /// <param name="arguments">The command line.</param>
    public static RunnerOutcome Run(
        string workingFolder, IReadOnlyDictionary<string, string> environment, Action<Process> whenStarted,
        params string[] arguments) =>
        Start("dotnet", workingFolder, environment, whenStarted, [Program, .. arguments]);

    /// <summary>Runs the program from a shell's script, to which it is <c>"$@"</c>.</summary>
    public static RunnerOutcome Shell(string workingFolder, string script, params string[] arguments) =>
        Start(
            "sh", workingFolder, new Dictionary<string, string>(), _ => { },
            ["-c", script, "sh", "dotnet", Program, .. arguments]);

    /// <summary>Runs another program, or this one installed elsewhere.</summary>
    public static RunnerOutcome Start(string program, string workingFolder, params string[] arguments) =>
        Start(program, workingFolder, new Dictionary<string, string>(), arguments);

    /// <summary>The same with variables of its own.</summary>
    public static RunnerOutcome Start(
        string program, string workingFolder, IReadOnlyDictionary<string, string> environment, params string[] arguments) =>
        Start(program, workingFolder, environment, _ => { }, arguments);

    private static string Program => Path.Combine(AppContext.BaseDirectory, "canopysim.dll");

    private static RunnerOutcome Start(
        string program, string workingFolder, IReadOnlyDictionary<string, string> environment, Action<Process> whenStarted,
        string[] arguments)
    {
        var start = new ProcessStartInfo(program)
        {
            WorkingDirectory = workingFolder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment) start.Environment[name] = value;
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        try
        {
            whenStarted(process);
            var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            if (!process.WaitForExit(LongestRun)) Assert.Fail($"{program} {string.Join(' ', arguments)} did not end");
            return new RunnerOutcome(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
        }
        finally
        {
            if (!process.HasExited) process.Kill(entireProcessTree: true);
        }
    }

    private static string FindRepository()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "CanopySim.sln"))) return folder.FullName;
        throw new InvalidOperationException("no CanopySim.sln above the tests");
    }
}
