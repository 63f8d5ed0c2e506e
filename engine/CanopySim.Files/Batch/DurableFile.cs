using System.Diagnostics;
using System.Globalization;

namespace CanopySim.Files.Batch;

/// <summary>The place cannot be written now; the same command may succeed later.</summary>
public sealed class TryAgainException(string message, Exception inner) : Exception(message, inner);

/// <summary>
/// Files that appear whole or not at all: written beside their place, flushed to the disk, then renamed. Several processes may
/// write one file; the last one stays.
/// </summary>
public static class DurableFile
{
    private const string Ending = ".tmp";

    // Longer than any writing takes, on whatever machine it runs.
    private static readonly TimeSpan Abandoned = TimeSpan.FromDays(1);

    /// <summary>Name of this process among all that share a folder.</summary>
    public static string Writer { get; } = string.Create(
        CultureInfo.InvariantCulture, $"{SafeName(Environment.MachineName)}-{Environment.ProcessId}");

    /// <exception cref="TryAgainException">The disk is full, or the folder cannot be written.</exception>
    public static void Publish(string path, ReadOnlySpan<byte> bytes)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var temporary = Path.Combine(
            folder, string.Create(CultureInfo.InvariantCulture, $".{Path.GetFileName(path)}.{Writer}-{Environment.CurrentManagedThreadId}{Ending}"));
        try
        {
            Directory.CreateDirectory(folder);
            using (var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: true);
        }
        // The last is what a file that grows beyond a limit is told as.
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
        {
            Remove(temporary);
            throw Unwritable(path, error);
        }
    }

    public static TryAgainException Unwritable(string path, Exception error) =>
        new($"{InputError.Quote(path)} cannot be written now ({error.Message})", error);

    /// <summary>Removes what processes that are gone left half-written in a folder.</summary>
    public static void RemoveAbandoned(string folder)
    {
        if (!Directory.Exists(folder)) return;
        foreach (var path in Directory.EnumerateFiles(folder, $".*{Ending}"))
            if (IsAbandoned(path)) Remove(path);
    }

    private static bool IsAbandoned(string path)
    {
        if (DateTime.UtcNow - File.GetLastWriteTimeUtc(path) > Abandoned) return true;
        // .name.machine-process-thread.tmp
        var writer = Path.GetFileName(path)[..^Ending.Length].Split('.')[^1].Split('-');
        if (writer.Length != 3 || writer[0] != SafeName(Environment.MachineName)) return false;
        return int.TryParse(writer[1], NumberStyles.None, CultureInfo.InvariantCulture, out var process)
            && process != Environment.ProcessId && !IsAlive(process);
    }

    private static bool IsAlive(int process)
    {
        try
        {
            using var found = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    // A name between dots and dashes must hold neither.
    private static string SafeName(string name) =>
        string.Concat(name.Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '_'));

    internal static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // What cannot be removed now is looked for again by the next run.
        }
    }
}
