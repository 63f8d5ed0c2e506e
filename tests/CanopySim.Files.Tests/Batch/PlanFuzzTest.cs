using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>Plans that were damaged at random.</summary>
public class PlanFuzzTest
{
    [Fact]
    public void WholeFilesAreRead() => FuzzAssert.WholeFilesAreRead(FuzzFormat.Plan);

    [Fact]
    public void NothingButInputErrors() => FuzzAssert.NothingButInputErrors(FuzzFormat.Plan, count: 5_000, read: 500);
}
