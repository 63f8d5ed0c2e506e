using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Files.Tests.Moments;

public sealed class SensorFuzzTest
{
    [Fact]
    public void WholeFilesAreRead() => FuzzAssert.WholeFilesAreRead(FuzzFormat.Sensors);

    [Fact]
    public void NothingButInputErrors() => FuzzAssert.NothingButInputErrors(FuzzFormat.Sensors, count: 20_000, read: 2_000);
}
