using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Files.Tests.Weather;

/// <summary>Whatever is done to a weather file, reading it succeeds or gives an <see cref="InputError"/> of one line.</summary>
public sealed class WeatherFuzzTest
{
    [Fact]
    public void WholeFilesAreRead() => FuzzAssert.WholeFilesAreRead(FuzzFormat.Weather);

    [Fact]
    public void NothingButInputErrors() => FuzzAssert.NothingButInputErrors(FuzzFormat.Weather, count: 40_000, read: 5_000);
}
