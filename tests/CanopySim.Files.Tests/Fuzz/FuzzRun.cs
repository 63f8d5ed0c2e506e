using System.Diagnostics;

namespace CanopySim.Files.Tests.Fuzz;

/// <summary>A file that was neither read nor refused as it should.</summary>
internal sealed record FuzzFault(long Index, byte[] Bytes, string What, string Rerun)
{
    public override string ToString() => $"file {Index} of {Bytes.Length} bytes: {What}\nto read it again alone: {Rerun}";
}

/// <summary>Reads many damaged files under a watch, and counts what became of them.</summary>
internal sealed class FuzzRun
{
    private const int MostFaults = 10;

    // A stack of a thread's usual size on the platform with the smallest: deep recursion must not pass here and fail there.
    private const int StackBytes = 1 << 20;

    private static readonly TimeSpan WatchEvery = TimeSpan.FromMilliseconds(250);

    private readonly List<FuzzFault> _faults = [];
    private long _at;
    private long _startedAt;

    public int Read { get; private set; }

    public int Refused { get; private set; }

    public TimeSpan Slowest { get; private set; }

    public long SlowestIndex { get; private set; }

    /// <summary>Most bytes that were allocated while one file was read.</summary>
    public long MostBytes { get; private set; }

    public IReadOnlyList<FuzzFault> Faults => _faults;

    public static FuzzRun Of(FileFuzz fuzz, long from, long count)
    {
        var run = new FuzzRun();
        var worker = new Thread(() => run.ReadAll(fuzz, from, count), StackBytes) { IsBackground = true };
        Volatile.Write(ref run._startedAt, Stopwatch.GetTimestamp());
        worker.Start();
        while (!worker.Join(WatchEvery))
        {
            if (Stopwatch.GetElapsedTime(Volatile.Read(ref run._startedAt)) < FuzzLimits.LongestRead) continue;
            // The thread cannot be stopped; what it counted stands, and the process ends without it.
            var index = Volatile.Read(ref run._at);
            run._faults.Add(new FuzzFault(index, fuzz.Bytes(index), $"still being read after {FuzzLimits.LongestRead.TotalSeconds} s", fuzz.Rerun(index)));
            break;
        }

        return run;
    }

    private void ReadAll(FileFuzz fuzz, long from, long count)
    {
        for (var index = from; index < from + count && _faults.Count < MostFaults; index++)
        {
            Volatile.Write(ref _at, index);
            Volatile.Write(ref _startedAt, Stopwatch.GetTimestamp());
            var outcome = fuzz.Try(index);
            if (outcome.Fault is string fault) _faults.Add(new FuzzFault(index, fuzz.Bytes(index), fault, fuzz.Rerun(index)));
            else if (outcome.IsRead) Read++;
            else Refused++;
            MostBytes = Math.Max(MostBytes, outcome.AllocatedBytes);
            if (outcome.Took > Slowest) (Slowest, SlowestIndex) = (outcome.Took, index);
        }
    }
}
