using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;

namespace CanopySim.Runner.Tests.Slurm;

/// <summary>
/// A Slurm cluster of four nodes of one core on this machine, by its loopback alone: key, socket, state and logs lie in a folder of its
/// own, which goes with it. It needs Debian's slurmctld, slurmd, slurm-client and munge, no systemd and no cgroups.
/// </summary>
internal sealed class SlurmCluster : IDisposable
{
    public const int Nodes = 4;

    private static readonly string[] Programs = ["munged", "slurmctld", "slurmd", "sbatch", "scontrol", "squeue", "sinfo", "scancel"];

    private static readonly TimeSpan LongestStart = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LongestCommand = TimeSpan.FromMinutes(2);

    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-slurm-").FullName;

    public SlurmCluster()
    {
        try
        {
            Start();
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>What is missing to start one, in words; null where nothing is.</summary>
    public static string? Missing { get; } = Programs.FirstOrDefault(program => Find(program) is null) is { } absent
        ? $"needs the Debian packages slurmctld, slurmd, slurm-client and munge: there is no {absent}"
        : null;

    /// <summary>Processes of daemons that are still alive; for the test that nothing is left.</summary>
    public IReadOnlyList<int> Daemons =>
        [.. PidFiles().Select(ProcessIn).OfType<int>().Where(process => IsAlive(process))];

    /// <summary>What a finished job's record says of a task, as slurmctld wrote it: a line of name=value for every end of it.</summary>
    public IReadOnlyList<string> Completions(string job, int task)
    {
        var path = Path.Combine(_folder, "completions.txt");
        return File.Exists(path)
            ? [.. File.ReadAllLines(path).Where(line => line.Contains($"ArrayJobId={job} ArrayTaskId={task} ", StringComparison.Ordinal))]
            : [];
    }

    /// <summary>Runs a program beside the cluster and returns what it printed.</summary>
    public RunnerOutcome Run(string workingFolder, string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program)
        {
            WorkingDirectory = workingFolder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        start.Environment["SLURM_CONF"] = Configuration;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(LongestCommand))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{program} {string.Join(' ', arguments)} did not end");
        }

        return new RunnerOutcome(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
    }

    /// <summary>A line of a Slurm command that must succeed.</summary>
    public string Call(string program, params string[] arguments)
    {
        var outcome = Run(_folder, program, arguments);
        return outcome.ExitCode == 0
            ? outcome.Output.Trim()
            : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)}: {outcome}");
    }

    /// <summary>The program, as its users call it.</summary>
    public RunnerOutcome Canopysim(string workingFolder, params string[] arguments) =>
        Run(workingFolder, "dotnet", [Path.Combine(AppContext.BaseDirectory, "canopysim.dll"), .. arguments]);

    /// <summary>A value of a job or of a task of an array, as scontrol tells it; null where it is not known.</summary>
    public string? JobValue(string job, string name)
    {
        var outcome = Run(_folder, "scontrol", "--oneliner", "show", "job", job);
        return outcome.Output.Split(' ', '\n').FirstOrDefault(word => word.StartsWith(name + "=", StringComparison.Ordinal))?[(name.Length + 1)..];
    }

    /// <summary>Waits until something is so.</summary>
    /// <exception cref="TimeoutException">It was not so in the time given, with how the queue stood.</exception>
    public void Wait(string what, TimeSpan longest, Func<bool> isSo)
    {
        var watch = Stopwatch.StartNew();
        while (!isSo())
        {
            if (watch.Elapsed > longest)
                throw new TimeoutException($"not {what} in {longest.TotalSeconds:0} s; the queue: {Run(_folder, "squeue", "--array").Output} {Run(_folder, "sinfo", "--Node").Output}");
            Thread.Sleep(100);
        }
    }

    /// <summary>Waits until nothing of a job is waiting or running.</summary>
    public void WaitForEnd(string job, TimeSpan longest) =>
        Wait($"job {job} at its end", longest, () => Run(_folder, "squeue", "--noheader", "--jobs", job).Output.Trim().Length == 0);

    /// <summary>Process of a node's job script on this machine, which is the program's own; null where none runs.</summary>
    public int? ProcessOf(string job)
    {
        var step = Run(_folder, "scontrol", "--oneliner", "show", "job", job).Output;
        var id = step.Split(' ').FirstOrDefault(word => word.StartsWith("JobId=", StringComparison.Ordinal))?[6..];
        if (id is null) return null;
        foreach (var process in Process.GetProcessesByName("dotnet"))
        {
            using (process)
            {
                if (VariableOf(process.Id, "SLURM_JOB_ID") == id && VariableOf(process.Id, "SLURM_CONF") == Configuration) return process.Id;
            }
        }

        return null;
    }

    /// <summary>Kills a node with all that runs on it, as a power failure does; the controller finds out by itself.</summary>
    /// <param name="node">From 1.</param>
    public void KillNode(int node)
    {
        var name = $"n{node.ToString(CultureInfo.InvariantCulture)}";
        KillNodeDaemon(node);
        KillProcessesOf(name);
    }

    /// <summary>Kills a node's daemon alone: what it started goes on, unseen.</summary>
    public void KillNodeDaemon(int node)
    {
        if (ProcessIn(PidFile($"n{node.ToString(CultureInfo.InvariantCulture)}")) is { } daemon) Signal("-KILL", daemon);
    }

    public void StartNode(int node) => Call(Find("slurmd")!, "-f", Configuration, "-N", $"n{node.ToString(CultureInfo.InvariantCulture)}");

    public void StopController() => Stop("slurmctld", "-TERM");

    public void StartController() => Call(Find("slurmctld")!, "-f", Configuration);

    /// <summary>Waits until every node would take a job.</summary>
    public void WaitForNodes() => Wait("all nodes idle", LongestStart, () =>
        Run(_folder, "sinfo", "--noheader", "--Node", "--format", "%t").Output.Split('\n').Count(state => state.Trim() == "idle") == Nodes);

    public void Dispose()
    {
        if (File.Exists(Configuration) && ProcessIn(PidFile("slurmctld")) is not null) Run(_folder, "scancel", "--user", Environment.UserName, "--signal=KILL", "--full");
        for (var node = 1; node <= Nodes; node++)
        {
            if (ProcessIn(PidFile($"n{node}")) is not null) KillProcessesOf($"n{node}");
            Stop($"n{node}", "-TERM");
        }

        Stop("slurmctld", "-TERM");
        Stop("munged", "-TERM");
        Directory.Delete(_folder, recursive: true);
    }

    private string Configuration => Path.Combine(_folder, "slurm.conf");

    private void Start()
    {
        // munged wants a way to its socket for all, and slurmd a folder for each node.
        Call("chmod", "755", _folder);
        foreach (var folder in (string[])["state", .. Enumerable.Range(1, Nodes).Select(node => $"n{node}")]) Directory.CreateDirectory(Path.Combine(_folder, folder));
        var key = Path.Combine(_folder, "munge.key");
        File.WriteAllBytes(key, RandomNumberGenerator.GetBytes(1024));
        Call("chmod", "400", key);
        File.WriteAllText(Configuration, Settings(FreePorts(Nodes + 1)));
        Call(
            Find("munged")!, $"--key-file={key}", $"--socket={_folder}/munge.socket", $"--pid-file={PidFile("munged")}",
            $"--log-file={_folder}/munged.log", $"--seed-file={_folder}/munge.seed");
        StartController();
        for (var node = 1; node <= Nodes; node++) StartNode(node);
        WaitForNodes();
    }

    // Credentials of two minutes would let a requeued task wait as long.
    private string Settings(int[] ports) => $"""
        ClusterName=tests
        SlurmctldHost=localhost(127.0.0.1)
        SlurmctldPort={ports[0]}
        SlurmUser={Environment.UserName}
        SlurmdUser={Environment.UserName}
        CommunicationParameters=NoInAddrAny,NoCtldInAddrAny
        AuthType=auth/munge
        AuthInfo=socket={_folder}/munge.socket,cred_expire=10
        CredType=cred/munge
        ProctrackType=proctrack/linuxproc
        TaskPlugin=task/none
        JobAcctGatherType=jobacct_gather/linux
        MpiDefault=none
        SelectType=select/cons_tres
        SelectTypeParameters=CR_Core_Memory
        StateSaveLocation={_folder}/state
        SlurmctldPidFile={PidFile("slurmctld")}
        SlurmctldLogFile={_folder}/slurmctld.log
        SlurmdSpoolDir={_folder}/%n
        SlurmdPidFile={_folder}/%n.pid
        SlurmdLogFile={_folder}/%n.log
        SlurmdParameters=config_overrides
        ReturnToService=2
        SlurmdTimeout=10
        KillWait=5
        JobRequeue=1
        RequeueExit=75
        MaxArraySize=1001
        MinJobAge=600
        JobCompType=jobcomp/filetxt
        JobCompLoc={_folder}/completions.txt
        {string.Join('\n', Enumerable.Range(1, Nodes).Select(node => $"NodeName=n{node} NodeHostname=localhost NodeAddr=127.0.0.1 Port={ports[node]} CPUs=1 RealMemory=2000"))}
        PartitionName=all Nodes=ALL Default=YES MaxTime=INFINITE State=UP DefMemPerCPU=500

        """;

    private void Stop(string daemon, string signal)
    {
        if (ProcessIn(PidFile(daemon)) is not { } process || !IsAlive(process)) return;
        Signal(signal, process);
        var watch = Stopwatch.StartNew();
        while (IsAlive(process) && watch.Elapsed < LongestStop) Thread.Sleep(50);
        if (IsAlive(process)) Signal("-KILL", process);
    }

    private void KillProcessesOf(string node)
    {
        foreach (var process in Process.GetProcesses())
        {
            using (process)
            {
                if (VariableOf(process.Id, "SLURMD_NODENAME") == node && VariableOf(process.Id, "SLURM_CONF") == Configuration) Signal("-KILL", process.Id);
            }
        }
    }

    private string PidFile(string daemon) => Path.Combine(_folder, $"{daemon}.pid");

    private string[] PidFiles() => Directory.GetFiles(_folder, "*.pid");

    private static void Signal(string signal, int process)
    {
        using var kill = Process.Start("kill", [signal, process.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    private static int? ProcessIn(string pidFile)
    {
        try
        {
            return int.Parse(File.ReadAllText(pidFile), CultureInfo.InvariantCulture);
        }
        catch (Exception error) when (error is IOException or FormatException)
        {
            return null;
        }
    }

    // A process that nobody waited for is dead, though its number still stands.
    private static bool IsAlive(int process)
    {
        try
        {
            var words = File.ReadAllText($"/proc/{process}/stat");
            return words[words.LastIndexOf(')') + 2] != 'Z';
        }
        catch (IOException)
        {
            return false;
        }
    }

    private static string? VariableOf(int process, string name)
    {
        try
        {
            return File.ReadAllText($"/proc/{process}/environ").Split('\0')
                .FirstOrDefault(variable => variable.StartsWith(name + "=", StringComparison.Ordinal))?[(name.Length + 1)..];
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static string? Find(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Concat(["/usr/sbin", "/sbin"])
            .Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);

    private static int[] FreePorts(int count)
    {
        List<TcpListener> listeners = [.. Enumerable.Range(0, count).Select(_ => new TcpListener(IPAddress.Loopback, 0))];
        foreach (var listener in listeners) listener.Start();
        int[] ports = [.. listeners.Select(listener => ((IPEndPoint)listener.LocalEndpoint).Port)];
        foreach (var listener in listeners) listener.Stop();
        return ports;
    }
}
