using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>Every room named for early compilation is there and compiles: one renamed would be left out without a word.</summary>
public class EarlyCompilationTests
{
    public static TheoryData<string> Rooms => [.. EarlyCompilation.Rooms];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Rooms_have_methods_that_compile(string room) => Assert.InRange(EarlyCompilation.Compile(room), 3, 10_000);

    [Fact]
    public void A_room_that_is_not_there_has_none() => Assert.Equal(0, EarlyCompilation.Compile("Cellar"));
}
