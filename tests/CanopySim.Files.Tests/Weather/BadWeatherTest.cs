using CanopySim.Weather;
using Xunit;

namespace CanopySim.Files.Tests.Weather;

/// <summary>Every way in which a weather file can be wrong, with the one line that says so.</summary>
public sealed class BadWeatherTest
{
    private const string CasesFile = "Weather/bad-weather.txt";

    public static TheoryData<string> Names => [.. GoldenCases.Read(CasesFile).Select(found => found.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void SaysWhereWhatAndWhatIsExpected(string name)
    {
        var (_, text, expected) = GoldenCases.Read(CasesFile).Single(found => found.Name == name);
        var settings = name.Split('|', StringSplitOptions.TrimEntries)[1..];
        var options = new WeatherOptions
        {
            File = "weather.csv",
            FillGaps = settings.Contains("fill"),
            Columns = settings.Where(setting => setting.Contains('=')).ToDictionary(setting => setting.Split('=')[0], setting => setting.Split('=')[1]),
        };
        Assert.Equal(expected, TestWeather.Message(text, options));
    }

    public static TheoryData<string, byte[], string> Bytes => new()
    {
        { "empty", [], "weather.csv:1: an empty file; expected a weather file" },
        { "UTF-16", [0xFE, 0xFF, 0, 0x64], "weather.csv:1: UTF-16 text; expected text in UTF-8" },
        { "a NUL byte", [.. "date,tmin,tmax\n2014-04-01,5"u8, 0, .. ",15\n"u8], "weather.csv:2: a NUL byte; expected text in UTF-8" },
        { "Latin-1", [.. "date,tmin,tmax\n2014-04-01,5,15\n# 8"u8, 0xB0, .. "C\n"u8], "weather.csv:3: bytes that are not UTF-8; expected text in UTF-8" },
        { "an escape", "date,tmin,tmax\n2014-04-01,5,1\u001b5\n"u8.ToArray(), "weather.csv:2: column 15: control character U+001B; expected text without control characters" },
    };

    [Theory]
    [MemberData(nameof(Bytes))]
    public void RefusesBytesThatAreNoText(string name, byte[] bytes, string expected)
    {
        Assert.NotEmpty(name);
        Assert.Equal(expected, TestWeather.Message(bytes));
    }

    [Fact]
    public void RefusesALineWithoutEnd() => Assert.Equal(
        "weather.csv:2: a line of 100001 bytes; expected lines of at most 100000", TestWeather.Message("date,tmin,tmax\n" + new string('1', 100_001)));

    [Fact]
    public void RefusesAMissingFile() => Assert.Equal(
        "none.csv: no file \"none.csv\"; expected a weather file",
        Assert.Throws<InputError>(() => CanopySim.Files.Weather.WeatherFile.Read("none.csv", new WeatherOptions { File = "none.csv" }, TestWeather.Seattle)).Message);
}
