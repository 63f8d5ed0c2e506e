using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

/// <summary>Whatever is done to a scenario's text, reading it succeeds or gives an <see cref="InputError"/> of one line.</summary>
public sealed class ScenarioFuzzTest
{
    [Fact]
    public void WholeFilesAreRead() => FuzzAssert.WholeFilesAreRead(FuzzFormat.Scenario);

    [Fact]
    public void NothingButInputErrors() => FuzzAssert.NothingButInputErrors(FuzzFormat.Scenario, count: 40_000, read: 8_000);
}
