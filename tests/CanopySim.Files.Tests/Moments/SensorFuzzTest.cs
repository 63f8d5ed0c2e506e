using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Files.Tests.Moments;

public sealed class SensorFuzzTest
{
    [Fact]
    public void WholeFilesAreRead() => FuzzAssert.WholeFilesAreRead(FuzzFormat.Sensors);

    [Fact]
    public void NothingButInputErrors() => FuzzAssert.NothingButInputErrors(FuzzFormat.Sensors, count: 10_000, read: 1_000);
}
