using System.Text;
using Xunit;

namespace CanopySim.Runner.Tests;

/// <summary>
/// Wrong input of every class ends with exit code 2 and one line on the error stream that says where and what; nothing is
/// printed as a result, and nothing is written.
/// </summary>
public class BadInputTests
{
    private const string Budbreak = "  harvest: target_sugar";

    [Theory]
    [InlineData("  spacing: 2.4 m", "  spaceing: 2.4 m", "rows.spaceing", "did you mean \"spacing\"?")]
    [InlineData("  spacing: 2.4 m", "  spacing: 2.4 kg", "rows.spacing", "\"2.4 kg\"")]
    [InlineData("  spacing: 2.4 m", "  spacing: 2.4", "rows.spacing", "\"2.4\"")]
    [InlineData("  spacing: 2.4 m", "  spacing: 2400 m", "rows.spacing", "\"2400 m\"")]
    [InlineData("  spacing: 2.4 m", "  spacing: 2.4 m\n  spacing: 2.5 m", "the key \"spacing\" twice", "expected", 1)]
    [InlineData("  latitude: 38.4 deg", "  latitude: 98.4 deg", "site.latitude", "\"98.4 deg\"")]
    [InlineData(Budbreak, Budbreak + "\n  budbreak: 2025-02-30", "season.budbreak", "\"2025-02-30\" is no date", 1)]
    [InlineData("  form: upright-hedge", "  form: upright-hedges", "trellis.form", "did you mean \"upright-hedge\"?")]
    [InlineData("  time_zone: UTC-08:00", "  time_zone: America/Los_Angels", "site.time_zone", "did you mean \"America/Los_Angeles\"?")]
    [InlineData("  file: weather.csv", "  file: wether.csv", "weather.file", "wether.csv")]
    [InlineData("seed: 1", "seed: *all", "the alias *all", "expected")]
    [InlineData("seed: 1", "seed: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]", "nesting deeper than 32", "expected")]
    [InlineData("seed: 1", "seed: {", "text that is no YAML", "expected", null)]
    public void In_a_scenario_is_named_with_file_line_and_key(string old, string wrong, string what, string hint, int? linesBelow = 0)
    {
        using var block = new BrokenBlock();
        var line = block.Replace("scenario.yaml", old, wrong) + linesBelow;
        var place = line is null ? "scenario.yaml:" : $"scenario.yaml:{line}: ";
        AssertRefused(block, Season(block), place, what, hint);
    }

    [Fact]
    public void An_alias_bomb_is_refused_before_it_unfolds()
    {
        using var block = new BrokenBlock();
        var text = new StringBuilder("a0: &a0 [1, 1, 1, 1, 1, 1, 1, 1, 1]\n");
        for (var level = 1; level < 20; level++)
            text.Append($"a{level}: &a{level} [{string.Join(", ", Enumerable.Repeat($"*a{level - 1}", 9))}]\n");
        File.WriteAllText(block.File("scenario.yaml"), text.ToString());
        AssertRefused(block, Season(block), "scenario.yaml:1: ", "the anchor &a0");
    }

    [Theory]
    [InlineData("scenario.yaml")]
    [InlineData("weather.csv")]
    public void Text_that_is_not_utf8_is_refused(string name)
    {
        using var block = new BrokenBlock();
        var bytes = File.ReadAllBytes(block.File(name));
        // Latin-1 for é: no sequence of UTF-8.
        File.WriteAllBytes(block.File(name), [.. bytes, .. "\n# caf"u8, 0xE9, .. "\n"u8]);
        AssertRefused(block, Season(block), name + ":", "UTF-8");
    }

    [Theory]
    [InlineData("gap", "1 day missing before 2025-05-11")]
    [InlineData("repeated", "the day 2025-05-10 a second time", 1)]
    [InlineData("crossed", "(tm")]
    [InlineData("no number", "(tmin °C): \"cold\"")]
    [InlineData("impossible", "(tmax °C)")]
    [InlineData("no day", "(date): \"2025-05-40\"")]
    [InlineData("short row", "2 cells")]
    public void In_the_weather_is_named_with_file_and_line(string fault, string what, int linesBelow = 0)
    {
        using var block = new BrokenBlock();
        var line = linesBelow + block.EditDay("2025-05-10", row => Broken(fault, row));
        AssertRefused(block, Season(block), $"weather.csv:{line}: ", what);
    }

    [Theory]
    [InlineData("--quality", "best", "--quality: \"best\"", "draft, standard, fine")]
    [InlineData("--units", "imperial", "--units: \"imperial\"", "metric, us")]
    [InlineData("--set", "rows.spacing", "--set: \"rows.spacing\"", "KEY=VALUE")]
    [InlineData("--set", "rows.spaceing=2 m", "--set: rows.spaceing", "did you mean \"spacing\"?")]
    [InlineData("--set", "rows.spacing=2 kg", "--set: rows.spacing", "\"2 kg\"")]
    [InlineData("--until", "2025-13-01", "--until: \"2025-13-01\"", "2025-07-20")]
    [InlineData("--leaves-on", "yesterday", "--leaves-on: \"yesterday\"", "2025-07-20")]
    [InlineData("--threads", "0", "--threads: \"0\"", "1 to 1024")]
    [InlineData("--threads", "two", "--threads: \"two\"", "1 to 1024")]
    [InlineData("--until", "2020-06-01", "--until: 2020-06-01, outside the season", "2025-02-01")]
    [InlineData("--leaves-on", "2026-06-01", "--leaves-on: 2026-06-01, outside the season", "2025-11-30")]
    [InlineData("--seed", "-3", "--seed: \"-3\"", "a whole number from 0")]
    [InlineData("--set", "season.budbreak=2024-04-01", "--set: season.budbreak: 2024-04-01, outside", "expected")]
    [InlineData("--out", "weather.csv", "--out: \"weather.csv\" is a file", "a folder for the results")]
    [InlineData("--qualty", "draft", "qualty", "canopysim --help")]
    public void In_an_option_is_named(string option, string value, string what, string expected)
    {
        using var block = new BrokenBlock();
        AssertRefused(block, RunnerProcess.Run(block.Folder, "season", "scenario.yaml", option, value), what, expected);
    }

    [Theory]
    [InlineData("sesson scenario.yaml", "sesson")]
    [InlineData("season", "SCENARIO")]
    [InlineData("season scenario.yaml extra.yaml", "extra.yaml")]
    [InlineData("season missing.yaml", "missing.yaml")]
    [InlineData("season .", ".: ")]
    [InlineData("check missing.yaml", "missing.yaml")]
    [InlineData("light scenario.yaml", "--at: no time")]
    [InlineData("light scenario.yaml --at noon", "--at: \"noon\" is no time")]
    [InlineData("light scenario.yaml --at 2031-07-20T10:00", "--at: 2031-07-20 is not in the weather")]
    [InlineData("light scenario.yaml --at 2025-07-20T10:00 --sensors missing.csv", "missing.csv: no file")]
    [InlineData("light scenario.yaml --at 2025-07-20T10:00 --sensors .", "is a folder")]
    [InlineData("light scenario.yaml --at 2025-07-20T10:00 --sensors weather.csv", "weather.csv:1: date: unknown column")]
    [InlineData("light scenario.yaml --at 2025-07-20T10:00 --sensors weather.csv --out .", "--sensors: weather.csv lies in the results folder")]
    [InlineData("compare", "compare: no scenario; expected 2 to 12 scenario files")]
    [InlineData("compare scenario.yaml", "compare: one scenario, \"scenario.yaml\"; expected 2 to 12 scenario files")]
    [InlineData("compare scenario.yaml ./scenario.yaml", "compare: the same file twice, \"scenario.yaml\"; expected")]
    [InlineData("compare scenario.yaml missing.yaml", "missing.yaml")]
    [InlineData("compare scenario.yaml scenario.yaml --until 2025-06-01", "until")]
    [InlineData("compare a.yaml b.yaml c.yaml d.yaml e.yaml f.yaml g.yaml h.yaml i.yaml j.yaml k.yaml l.yaml m.yaml", "13 scenarios; expected 2 to 12")]
    [InlineData("sun", "neither --at nor --times")]
    [InlineData("sun --at 2025-06-21T12:00:00Z", "--at: no place; expected --latitude and --longitude")]
    [InlineData("sun --at 2025-06-21T12:00:00Z --latitude 38.4", "--at: no place")]
    [InlineData("sun --at 2025-06-21T12:00:00Z --latitude 98 --longitude 0", "--latitude: \"98\"")]
    [InlineData("sun --at 2025-06-21T12:00:00Z --latitude north --longitude 0", "--latitude: \"north\"")]
    [InlineData("sun --at never --latitude 38 --longitude 0", "--at: utc: \"never\" is no time")]
    [InlineData("sun --times missing.csv", "missing.csv")]
    [InlineData("sun --times weather.csv", "weather.csv:1: ")]
    public void On_the_command_line_is_named(string commandLine, string what)
    {
        using var block = new BrokenBlock();
        AssertRefused(block, RunnerProcess.Run(block.Folder, commandLine.Split(' ')), what);
    }

    // The other option is well and may be running when the wrong one is found out.
    [Fact]
    public void In_one_of_the_compared_scenarios_is_named_with_its_file()
    {
        using var block = new BrokenBlock();
        File.WriteAllText(block.File("later.yaml"), "based_on: scenario.yaml\nname: Later\n\nseason:\n  year: 2031\n");
        var run = RunnerProcess.Run(block.Folder, "compare", "scenario.yaml", "later.yaml", "--quality", "draft");
        Assert.True(run.ExitCode == RunnerApp.BadInput, run.ToString());
        Assert.StartsWith("canopysim: later.yaml: season.year: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        Assert.Equal(["later.yaml"], block.Additions().Where(entry => entry != "results"));
        Assert.Empty(Directory.GetFileSystemEntries(block.File("results")));
    }

    private static RunnerOutcome Season(BrokenBlock block) => RunnerProcess.Run(block.Folder, "season", "scenario.yaml", "--quality", "draft");

    private static IEnumerable<string> Broken(string fault, string row)
    {
        var cells = row.Split(',');
        switch (fault)
        {
            case "gap": return [];
            case "repeated": return [row, row];
            case "crossed": (cells[1], cells[2]) = (cells[2], cells[1]); break;
            case "no number": cells[1] = "cold"; break;
            case "impossible": cells[2] = "95"; break;
            case "no day": cells[0] = "2025-05-40"; break;
            case "short row": return [string.Join(',', cells.Take(2))];
            default: throw new ArgumentException("unknown fault", nameof(fault));
        }

        return [string.Join(',', cells)];
    }

    private static void AssertRefused(BrokenBlock block, RunnerOutcome run, params string[] expected)
    {
        Assert.True(run.ExitCode == RunnerApp.BadInput, run.ToString());
        var line = Assert.Single(run.ErrorLines);
        Assert.StartsWith("canopysim: ", line, StringComparison.Ordinal);
        foreach (var part in expected) Assert.Contains(part, line, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
        Assert.Empty(block.Additions());
    }
}
