using System.Diagnostics;
using Xunit;

namespace CanopySim.Tests.Light;

/// <summary>
/// The engine's vectors lane by lane: a process in which .NET is told that the processor has none (or not the wider ones)
/// must see the same suns, links and light to the last bit, so that a result does not depend on where it was computed.
/// </summary>
public class PlainProcessorTests
{
    private static readonly Lazy<string[]> WithVectors = new(() => Run());

    [Theory]
    [InlineData("DOTNET_EnableHWIntrinsic")]
    [InlineData("DOTNET_EnableAVX2")]
    [InlineData("DOTNET_EnableAVX")]
    public void Suns_links_and_light_are_the_same_bits_without(string feature)
    {
        var plain = Run(feature);
        Assert.InRange(plain.Length, 100, 200);
        if (System.Runtime.Intrinsics.Vector256.IsHardwareAccelerated) Assert.NotEqual(WithVectors.Value[0], plain[0]);
        Assert.Equal(WithVectors.Value[1..], plain[1..]);
    }

    private static string[] Run(string? withoutFeature = null)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "CanopySim.Counts.dll"));
        if (withoutFeature is not null) start.Environment[withoutFeature] = "0";
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }
}
