using CanopySim.Files.Tests.Fuzz;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>
/// Damaged files through the whole program, in this process: <c>canopysim check</c> ends with 0 and says nothing on stderr, or
/// with 2 and one line there. Reading alone is fuzzed by the hundred thousand in CanopySim.Files.Tests.
/// </summary>
[Collection(nameof(ConsoleOfThisProcess))]
public sealed class CheckFuzzTests
{
    private const ulong Seed = 3;

    // The scenario with every key names a budbreak that the daily table covers; the hours of the others begin on this day.
    private const string FirstDay = "season.budbreak=2014-04-01";

    [Theory]
    [InlineData("scenario", 300)]
    [InlineData("weather", 300)]
    [InlineData("epw", 100)]
    public void EndsWellOrSaysOneLine(string name, int count)
    {
        var format = FuzzFormat.All.Single(format => format.Name == name);
        using var folder = new TemporaryFolder();
        foreach (var (beside, bytes) in FuzzFormat.Beside) File.WriteAllBytes(folder.File(beside), bytes);
        var damaged = folder.File(format == FuzzFormat.Scenario ? format.FileName : "weather.csv");
        string[] arguments = format == FuzzFormat.Scenario ? ["check", damaged] : ["check", folder.File("base.yaml"), "--set", FirstDay, "--set", "weather.fill_gaps=true"];
        var (output, errors) = (Console.Out, Console.Error);
        Console.SetOut(TextWriter.Null);
        try
        {
            // Undamaged first: it must end well, else every damaged file would be refused for the same reason.
            var (well, refused) = (0, 0);
            foreach (var bytes in format.Whole.Concat(Enumerable.Range(0, count).Select(index => Mutations.Of(format.Whole, Seed, format.Name, index))))
            {
                using var error = new StringWriter();
                Console.SetError(error);
                File.WriteAllBytes(damaged, bytes);
                var code = RunnerApp.Run(arguments);
                var lines = error.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
                var at = well + refused - format.Whole.Count;
                Assert.True(
                    code == RunnerApp.Ok ? lines.Length == 0 : code == RunnerApp.BadInput && lines.Length == 1,
                    $"file {at} of {name}, seed {Seed}: exit code {code}, stderr: {error}");
                if (code == RunnerApp.Ok) well++;
                else refused++;
                if (at == -format.Whole.Count) Assert.True(code == RunnerApp.Ok, $"the whole file is refused: {error}");
            }

            Assert.True(well > count / 20 && refused > count / 2, $"{well} ended well, {refused} were refused");
        }
        finally
        {
            Console.SetOut(output);
            Console.SetError(errors);
        }
    }
}

/// <summary>Tests that take over the console of their process run alone.</summary>
[CollectionDefinition(nameof(ConsoleOfThisProcess), DisableParallelization = true)]
public sealed class ConsoleOfThisProcess;
