using CanopySim.Files.Scenarios;
using CsCheck;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

/// <summary>Whatever is done to a scenario's text, reading it succeeds or gives an <see cref="InputError"/> of one line.</summary>
public sealed class ScenarioFuzzTest
{
    [Fact]
    public void NothingButInputErrors()
    {
        using var files = new TestScenario();
        var starter = ScenarioFile.Starter();
        // Lines without their remarks: every mutation then meets something that is read.
        var bare = string.Join('\n', starter.Split('\n').Where(line => !line.TrimStart().StartsWith('#')).Select(line => line.Split("    #")[0]));
        var given = string.Join('\n', starter.Split('\n').Select(line => line.Replace("  # ", "  ").Split("    #")[0]).Where(line => !line.StartsWith('#')));
        var (read, refused) = (0, 0);
        Mutations.Of(bare, given, starter).Sample(
            bytes =>
            {
                File.WriteAllBytes(files.At("block.yaml"), bytes);
                try
                {
                    ScenarioFile.Read(files.At("block.yaml"));
                    read++;
                }
                catch (InputError error)
                {
                    Assert.DoesNotContain('\n', error.Message);
                    refused++;
                }
            },
            iter: 8_000,
            threads: 1,
            seed: "0000KOIPe036");
        // A fuzz that only ever met one outcome would test half of it.
        Assert.True(read > 200 && refused > 2_000, $"{read} read, {refused} refused");
    }
}
