using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Files.Tests.Notes;

/// <summary>Sheets of notes that were damaged at random.</summary>
public class NotesFuzzTest
{
    [Fact]
    public void WholeFilesAreRead() => FuzzAssert.WholeFilesAreRead(FuzzFormat.Notes);

    [Fact]
    public void NothingButInputErrors() => FuzzAssert.NothingButInputErrors(FuzzFormat.Notes, count: 10_000, read: 500);
}
