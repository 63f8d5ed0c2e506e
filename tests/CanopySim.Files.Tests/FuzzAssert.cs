using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Files.Tests;

/// <summary>What a fuzz of a format must show.</summary>
internal static class FuzzAssert
{
    private const ulong Seed = 1;

    /// <summary>Undamaged they are read, else every damaged one would be refused for the same reason.</summary>
    public static void WholeFilesAreRead(FuzzFormat format)
    {
        using var fuzz = new FileFuzz(format, Seed);
        foreach (var bytes in format.Whole)
        {
            // Both indexes: tables are read with and without filling; empty cells need it.
            var outcomes = new[] { fuzz.Try(bytes, 0), fuzz.Try(bytes, 1) };
            Assert.All(outcomes, outcome => Assert.Null(outcome.Fault));
            Assert.Contains(outcomes, outcome => outcome.IsRead);
        }
    }

    /// <summary>Of a count of damaged files, each is read or refused with one line, in bounded time and memory; and enough are read.</summary>
    public static void NothingButInputErrors(FuzzFormat format, int count, int read)
    {
        using var fuzz = new FileFuzz(format, Seed);
        var run = FuzzRun.Of(fuzz, from: 0, count);
        Assert.True(run.Faults.Count == 0, string.Join("\n\n", run.Faults));
        // A fuzz that only ever met one outcome would test half of it.
        Assert.True(run.Read >= read && run.Refused >= count / 2, $"{run.Read} read, {run.Refused} refused; expected at least {read} and {count / 2}");
    }
}
