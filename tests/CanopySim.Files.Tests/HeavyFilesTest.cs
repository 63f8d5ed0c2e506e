using CanopySim.Files.Tests.Fuzz;
using CanopySim.Files.Tests.Scenarios;
using CanopySim.Files.Tests.Weather;
using Xunit;

namespace CanopySim.Files.Tests;

/// <summary>Files that once cost the square of their size, 14 GB of memory for 100 kB: each is refused at the cost of its bytes.</summary>
public sealed class HeavyFilesTest
{
    [Fact]
    public void AHeaderOfVeryManyWords()
    {
        var text = string.Concat(Enumerable.Repeat("a_b ", 24_000)) + ",tmin,tmax\n2014-04-01,5,15\n";
        Costs(text.Length, () => TestWeather.Message(text));
    }

    [Fact]
    public void VeryManyKeysLaidOverVeryManyKeys()
    {
        using var files = new TestScenario();
        var keys = string.Concat(Enumerable.Range(0, 45_000).Select(index => $"k{index}: 1\n"));
        files.Write("base.yaml", keys);
        Costs(2 * keys.Length, () => Assert.Contains("unknown key", files.Message("based_on: base.yaml\n" + keys)));
    }

    private static void Costs(int size, Action read)
    {
        var allocated = GC.GetAllocatedBytesForCurrentThread();
        read();
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - allocated, 0, FuzzLimits.Bytes(FuzzFormat.Weather, size));
    }
}
