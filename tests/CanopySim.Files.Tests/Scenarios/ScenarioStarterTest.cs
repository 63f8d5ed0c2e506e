using System.Text.RegularExpressions;
using CanopySim.Files.Scenarios;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

public sealed partial class ScenarioStarterTest : IDisposable
{
    private readonly TestScenario _files = new();

    public void Dispose() => _files.Dispose();

    [Fact]
    public void ReadsBack()
    {
        var document = _files.Read(ScenarioFile.Starter());
        Assert.Equal("my block", document.Scenario.Name);
        Assert.Equal(-122.3, document.Scenario.Site.Longitude);
        Assert.Equal(new CanopySim.Growth.GrowthParameters(), document.Scenario.Growth);
    }

    [Fact]
    public void SaysThatTheWeatherFileIsMissing()
    {
        File.Delete(_files.At("weather.csv"));
        var error = _files.Error(ScenarioFile.Starter());
        Assert.Equal("weather.file", error.Key);
    }

    private static readonly Dictionary<string, string> FormOf = new()
    {
        ["lower_cordon_height"] = "up-and-down",
        ["head_height"] = "bush",
        ["cordon_distance"] = "twin-curtain",
        ["wall_tilt"] = "open-u",
    };

    [Fact]
    public void EveryLineThatIsCommentedOutCanBeGiven()
    {
        var lines = ScenarioFile.Starter().Split('\n');
        var given = 0;
        for (var i = 0; i < lines.Length; i++)
        {
            if (CommentedKey().Match(lines[i]) is not { Success: true } match) continue;
            var changed = lines.ToArray();
            changed[i] = match.Groups["indent"].Value + match.Groups["rest"].Value;
            // Some lengths of a trellis belong to one form.
            var text = string.Join('\n', changed);
            if (FormOf.TryGetValue(match.Groups["rest"].Value.Split(':')[0], out var form)) text = text.Replace("form: upright-hedge", $"form: {form}");
            var document = _files.Read(text);
            Assert.Equal(_files.At("block.yaml") + $":{i + 1}", document.Values.Single(value => value.Where.EndsWith($":{i + 1}", StringComparison.Ordinal)).Where);
            given++;
        }

        Assert.InRange(given, 80, 400);
    }

    [Fact]
    public void HasEverySectionAndEveryKey()
    {
        var starter = ScenarioFile.Starter();
        var document = _files.Read(TestScenario.Least);
        foreach (var key in document.Values.Select(value => value.Key.Split('.')[^1])) Assert.Contains($"{key}:", starter);
        foreach (var section in document.Values.Where(value => value.Key.Contains('.')).Select(value => value.Key.Split('.')[0]).Distinct())
            Assert.Contains($"\n{section}:", starter);
    }

    [GeneratedRegex(@"^(?<indent> *)# (?<rest>[a-z_0-9]+: [^#{]+#.*)$")]
    private static partial Regex CommentedKey();
}
