using System.Diagnostics;

namespace CanopySim.Files.Tests.Fuzz;

/// <summary>What became of one damaged file. A fault is anything but a clean read or an <see cref="InputError"/> of one line.</summary>
internal readonly record struct FuzzOutcome(string? Refusal, string? Fault, long AllocatedBytes, TimeSpan Took)
{
    public bool IsRead => Refusal is null && Fault is null;
}

/// <summary>Writes the damaged files of one format and seed into a folder of its own, one after the other, and reads them.</summary>
internal sealed class FileFuzz : IDisposable
{
    private readonly FuzzFormat _format;
    private readonly ulong _seed;
    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-fuzz-").FullName;

    public FileFuzz(FuzzFormat format, ulong seed)
    {
        (_format, _seed) = (format, seed);
        foreach (var (name, bytes) in FuzzFormat.Beside) File.WriteAllBytes(System.IO.Path.Combine(_folder, name), bytes);
    }

    /// <summary>The file that is read: whatever ends the whole process leaves its cause here.</summary>
    public string Path => System.IO.Path.Combine(_folder, _format.FileName);

    public byte[] Bytes(long index) => Mutations.Of(_format.Whole, _seed, _format.Name, index);

    /// <summary>The command that reads just this file once more.</summary>
    public string Rerun(long index) =>
        FormattableString.Invariant($"dotnet run -c Release --project bench/CanopySim.Bench -- fuzz --format {_format.Name} --seed {_seed} --index {index} --out DIR");

    public FuzzOutcome Try(long index) => Try(Bytes(index), index);

    /// <summary>Reads bytes as the file of an index.</summary>
    public FuzzOutcome Try(byte[] bytes, long index)
    {
        File.WriteAllBytes(Path, bytes);
        var (allocated, started) = (GC.GetAllocatedBytesForCurrentThread(), Stopwatch.GetTimestamp());
        string? refusal = null, fault = null;
        try
        {
            _format.Read(Path, index);
        }
        catch (InputError error)
        {
            refusal = error.Message;
            if (error.Message.AsSpan().IndexOfAny("\r\n\u2028\u0085") >= 0) fault = $"a message of several lines: {error.Message}";
        }
        catch (Exception error)
        {
            fault = error.ToString();
        }

        var took = Stopwatch.GetElapsedTime(started);
        allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
        var limit = FuzzLimits.Bytes(_format, bytes.Length);
        if (fault is null && allocated > limit)
            fault = $"{allocated} bytes of memory for a file of {bytes.Length}; expected at most {limit}";
        if (fault is null && took > FuzzLimits.LongestRead) fault = $"read in {took.TotalSeconds:0.0} s; expected at most {FuzzLimits.LongestRead.TotalSeconds} s";
        return new FuzzOutcome(refusal, fault, allocated, took);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
