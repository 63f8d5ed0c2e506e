using System.Text.RegularExpressions;
using Xunit;

namespace CanopySim.Runner.Tests.Learning;

/// <summary>
/// The table in the README of each study is what its command gives now. <c>tests/studies.sh</c> runs this with
/// <c>CANOPYSIM_STUDIES</c> set to "write", which writes the tables anew.
/// </summary>
public sealed partial class StudyTests
{
    private const string Command = "    canopysim ";

    private static readonly string Scenarios = Path.Combine(RunnerProcess.Repository, "scenarios");

    private static readonly Dictionary<string, IReadOnlyList<StudyFigure>> Studies = new()
    {
        ["leaf-age"] =
        [
            StudyFigure.Ripe, StudyFigure.Sugar, StudyFigure.Yield, StudyFigure.LeafAlongCanopy, StudyFigure.Gain,
            StudyFigure.Aged("under 60 days", 0, 60), StudyFigure.Aged("of 60 to 100 days", 60, 100),
            StudyFigure.Aged("over 100 days", 100, int.MaxValue),
        ],
        ["row-direction"] =
        [
            StudyFigure.Ripe, StudyFigure.Yield, StudyFigure.Gain, StudyFigure.ClusterLight, StudyFigure.MorningShare,
            StudyFigure.BrightSide, StudyFigure.DarkSide, StudyFigure.Browning,
        ],
        ["shoot-number"] =
        [
            StudyFigure.Ripe, StudyFigure.Sugar, StudyFigure.Yield, StudyFigure.ShootLength,
            StudyFigure.LeafAlongCanopy, StudyFigure.LeafToFruit, StudyFigure.Layers, StudyFigure.ClusterLight,
            StudyFigure.Fruitfulness,
        ],
        ["leaf-pulling"] =
        [
            StudyFigure.Ripe, StudyFigure.Sugar, StudyFigure.Yield, StudyFigure.LeafToFruit, StudyFigure.Layers,
            StudyFigure.Lateral, StudyFigure.ClusterLight, StudyFigure.MorningShare, StudyFigure.Browning,
        ],
        ["topping-time"] =
        [
            StudyFigure.Ripe, StudyFigure.Sugar, StudyFigure.Yield, StudyFigure.ShootLength, StudyFigure.Lateral,
            StudyFigure.LeafToFruit, StudyFigure.Aged("under 60 days", 0, 60),
        ],
    };

    public static TheoryData<string> Names => [.. Studies.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_table_says_what_the_command_gives(string study)
    {
        var path = Path.Combine(Scenarios, study, "README.md");
        var readme = File.ReadAllText(path);
        var line = readme.Split('\n').First(line => line.StartsWith($"{Command}compare ", StringComparison.Ordinal));
        var command = line[Command.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        AssertComparesTheWholeFolder(study, command);

        using var folder = new TemporaryFolder();
        var run = RunnerProcess.Run(
            RunnerProcess.Repository, [.. command, "--quiet", "--threads", "2", "--out", folder.File("compared")]);
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
        var table = StudyTable.Of(Studies[study], CsvRows.Read(Path.Combine(folder.File("compared"), "compare.csv")));
        if (Environment.GetEnvironmentVariable("CANOPYSIM_STUDIES") == "write")
            File.WriteAllText(path, StudyTable.Put(readme, table));
        else
            Assert.True(
                StudyTable.In(readme) == table,
                $"the table of {path} is not what the model gives now; write it with bash tests/studies.sh\n{table}");
    }

    /// <summary>The question to try next is one that the program takes.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_next_command_reads(string study)
    {
        var line = File.ReadLines(Path.Combine(Scenarios, study, "README.md"))
            .Last(line => line.StartsWith($"{Command}compare ", StringComparison.Ordinal));
        string[] command = [.. Words().Matches(line[Command.Length..])
            .Select(word => word.Value.Replace("\"", "", StringComparison.Ordinal))];
        Assert.Contains("--set", command);
        var run = RunnerProcess.Run(RunnerProcess.Repository, ["check", .. command[1..^2]]);
        Assert.True(run.ExitCode == RunnerApp.Ok, run.ToString());
    }

    [GeneratedRegex("""(?:[^\s"]|"[^"]*")+""")]
    private static partial Regex Words();

    private static void AssertComparesTheWholeFolder(string study, string[] command)
    {
        Assert.Equal(["--quality", "draft"], command[^2..]);
        Assert.Equal(
            Directory.EnumerateFiles(Path.Combine(Scenarios, study), "*.yaml")
                .Select(file => $"scenarios/{study}/{Path.GetFileName(file)}").Order(StringComparer.Ordinal),
            command[1..^2].Order(StringComparer.Ordinal));
    }
}
