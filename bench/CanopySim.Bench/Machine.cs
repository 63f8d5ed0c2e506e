using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CanopySim.Bench;

/// <summary>What the tables were measured on.</summary>
internal static class Machine
{
    /// <summary>Processor, cores, width of vectors, runtime, day and the load when it was asked.</summary>
    public static string Line => string.Create(CultureInfo.InvariantCulture,
        $"{Processor}, {Environment.ProcessorCount} logical cores, vectors of {(Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256 : 128)} bits, {RuntimeInformation.FrameworkDescription}, {Build}, {DateTime.Today:d MMMM yyyy}, load {Load}.");

    private static string Build =>
#if DEBUG
        "DEBUG BUILD";
#else
        "Release";
#endif

    private static string Processor
    {
        get
        {
            const string Facts = "/proc/cpuinfo";
            var line = File.Exists(Facts) ? File.ReadLines(Facts).FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal)) : null;
            return line?[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim()
                ?? Environment.GetEnvironmentVariable("PROCESSOR_IDENTIFIER")
                ?? RuntimeInformation.ProcessArchitecture.ToString();
        }
    }

    private static string Load => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown";

    /// <summary>Processor time of all cores that the host of a virtual machine gave to others since the start [s]; 0 where it does not tell.</summary>
    public static double StolenSeconds
    {
        get
        {
            // proc(5): the eighth figure of the first line, in hundredths of a second on all that Linux runs on.
            const string Facts = "/proc/stat";
            const int Stolen = 8;
            if (!File.Exists(Facts)) return 0;
            var figures = File.ReadLines(Facts).First().Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return double.Parse(figures[Stolen], CultureInfo.InvariantCulture) / 100;
        }
    }

    /// <summary>Most memory that the process held since <see cref="ForgetPeak"/> [MB].</summary>
    public static double PeakMegabytes
    {
        get
        {
            using var process = Process.GetCurrentProcess();
            return process.PeakWorkingSet64 / 1e6;
        }
    }

    /// <summary>Frees what nobody holds and begins a new peak. Where the system keeps one peak for a process, it stays the highest so far.</summary>
    public static void ForgetPeak()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        try
        {
            // Linux: 5 sets the peak back to what is held now (proc_pid_clear_refs).
            if (OperatingSystem.IsLinux()) File.WriteAllText("/proc/self/clear_refs", "5");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine("the peak of memory cannot be set back: it is the highest so far");
        }
    }
}
