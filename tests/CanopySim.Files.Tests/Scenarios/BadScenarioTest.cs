using System.Text;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

/// <summary>Every way in which a scenario can be wrong, with the one line that says so.</summary>
public sealed class BadScenarioTest : IDisposable
{
    private const string CasesFile = "Scenarios/bad-scenarios.txt";

    private readonly TestScenario _files = new();

    public static TheoryData<string> Names => [.. GoldenCases.Read(CasesFile).Select(found => found.Name)];

    public void Dispose() => _files.Dispose();

    [Theory]
    [MemberData(nameof(Names))]
    public void SaysWhereWhatAndWhatIsExpected(string name)
    {
        var (_, text, expected) = GoldenCases.Read(CasesFile).Single(found => found.Name == name);
        // "+" stands for the least that a scenario must give, seven lines.
        var error = _files.Error(text.Replace("+\n", TestScenario.Least));
        Assert.Equal(expected, _files.Short(error));
        Assert.DoesNotContain('\n', error.Message);
        Assert.Equal(_files.At("block.yaml"), error.File);
    }

    [Theory]
    [InlineData("rows.spacing", "--set: \"rows.spacing\"; expected KEY=VALUE, such as rows.spacing=2.4 m")]
    [InlineData("rows.spacing=2.4", "--set: rows.spacing: \"2.4\" has no unit; expected a length, 0.8 to 6 m")]
    [InlineData("rows.spacng=2.4 m", "--set: rows.spacng: unknown key \"spacng\"; expected one of spacing, vine_spacing, azimuth, vines_in_cell, rows_in_cell; did you mean \"spacing\"?")]
    [InlineData("canopy_work.topping.0.nodes=12", "--set: canopy_work.topping: keys with values; expected a list")]
    [InlineData("based_on=other.yaml", "--set: based_on: a value; expected based_on in the file alone")]
    [InlineData("weather.file=other.csv", "--set: weather.file: no file \"other.csv\"; expected a weather file")]
    [InlineData("leaf_age.points=[[0 d, 0.1], [10 d]]", "--set: leaf_age.points.1: a list of 1; expected a list such as [500 d, 1]")]
    [InlineData("rows={spacing: 2 m, spacing: 3 m}", "--set: the key \"spacing\" twice; expected each key once")]
    [InlineData("name.x.y=3", "--set: name: keys with values; expected text")]
    public void NamesTheOptionWhereItIsToBlame(string overrides, string expected) =>
        Assert.Equal(expected, _files.Message(TestScenario.Least, overrides));

    [Fact]
    public void NamesTheListEntryOfAnOverride() => Assert.Equal(
        "--set: canopy_work.topping.5.nodes: \"5\" for a list; expected a number from 0 to 0",
        _files.Message(TestScenario.Least + "canopy_work:\n  topping: [{nodes: 12, on: 2014-07-01}]\n", "canopy_work.topping.5.nodes=3"));

    public static TheoryData<string, byte[], string> Bytes => new()
    {
        { "empty", [], "block.yaml:1: an empty file; expected a scenario file" },
        { "only a byte order mark", [0xEF, 0xBB, 0xBF], "block.yaml:1: no keys, only comments or nothing; expected a scenario" },
        { "UTF-16", [0xFF, 0xFE, 0x61, 0x00], "block.yaml:1: UTF-16 text; expected text in UTF-8" },
        { "a NUL byte", [.. "name: a\nseed: "u8, 0, (byte)'\n'], "block.yaml:2: a NUL byte; expected text in UTF-8" },
        { "Latin-1", [.. "seed: 1\nname: Ch"u8, 0xE2, .. "teau\n"u8], "block.yaml:2: bytes that are not UTF-8; expected text in UTF-8" },
        { "a bell", "name: a\u0007\n"u8.ToArray(), "block.yaml:1: column 8: control character U+0007; expected text without control characters" },
        { "a return alone", "name: a\rseed: 1\n"u8.ToArray(), "block.yaml:1: column 8: control character U+000D; expected text without control characters" },
    };

    [Theory]
    [MemberData(nameof(Bytes))]
    public void RefusesBytesThatAreNoText(string name, byte[] bytes, string expected)
    {
        Assert.NotEmpty(name);
        File.WriteAllBytes(_files.At("block.yaml"), bytes);
        var error = Assert.Throws<InputError>(() => CanopySim.Files.Scenarios.ScenarioFile.Read(_files.At("block.yaml")));
        Assert.Equal(expected, _files.Short(error));
    }

    [Fact]
    public void RefusesAMissingFileAndAFolder()
    {
        var missing = Assert.Throws<InputError>(() => CanopySim.Files.Scenarios.ScenarioFile.Read("none/block.yaml"));
        Assert.Equal("none/block.yaml: no file \"none/block.yaml\"; expected a scenario file", missing.Message);
        var folder = Assert.Throws<InputError>(() => CanopySim.Files.Scenarios.ScenarioFile.Read(_files.At("")));
        Assert.EndsWith("is a folder; expected a scenario file", folder.Message);
    }

    [Fact]
    public void RefusesWhatIsTooLarge()
    {
        Assert.EndsWith("is larger than 1 MB; expected a scenario of at most 1 MB", _files.Message("# " + new string('x', 1_000_001)));
        var values = new StringBuilder(TestScenario.Least + "leaf_age:\n  points: [");
        for (var i = 0; i < 120_000; i++) values.Append("1, ");
        Assert.Equal("block.yaml:9: column 299955: more than 100000 values; expected a scenario, which has a few hundred", _files.Message(values + "1]\n"));
        Assert.Equal(
            "block.yaml:1: column 33: nesting deeper than 32; expected a scenario, which nests four deep", _files.Message(new string('[', 900_000)));
    }

    [Fact]
    public void RefusesChainsThatEndNowhere()
    {
        _files.Write("a.yaml", "based_on: block.yaml\n");
        Assert.Equal("a.yaml:1: based_on: \"block.yaml\", which is based on this file in turn; expected a file that stands on its own", Short(_files.Message("based_on: a.yaml\n")));
        Assert.Equal("block.yaml:1: based_on: no file \"none.yaml\"; expected a scenario file", Short(_files.Message("based_on: none.yaml\n")));
        for (var i = 0; i < 10; i++) _files.Write($"c{i}.yaml", $"based_on: c{i + 1}.yaml\n");
        Assert.Equal("c6.yaml:1: based_on: a chain of more than 8 files; expected a shorter chain of based_on", Short(_files.Message("based_on: c0.yaml\n")));

        string Short(string message) => message.Replace(_files.At(""), "");
    }

    [Fact]
    public void AnErrorInTheBaseNamesTheBase()
    {
        _files.Write("base.yaml", TestScenario.Least + "rows:\n  spacing: 20 m\n");
        var error = _files.Error("based_on: base.yaml\nrows:\n  vine_spacing: 1 m\n");
        Assert.Equal("base.yaml:9: rows.spacing: \"20 m\" is out of range; expected 0.8 to 6 m", _files.Short(error));
        Assert.Equal((9, "rows.spacing"), (error.Line, error.Key));
    }
}
