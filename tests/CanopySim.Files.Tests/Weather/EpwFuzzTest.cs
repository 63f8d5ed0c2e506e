using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Files.Tests.Weather;

/// <summary>Whatever is done to an EPW file, reading it succeeds or gives an <see cref="InputError"/> of one line.</summary>
public sealed class EpwFuzzTest
{
    [Fact]
    public void WholeFilesAreRead() => FuzzAssert.WholeFilesAreRead(FuzzFormat.Epw);

    [Fact]
    public void NothingButInputErrors() => FuzzAssert.NothingButInputErrors(FuzzFormat.Epw, count: 20_000, read: 2_200);
}
