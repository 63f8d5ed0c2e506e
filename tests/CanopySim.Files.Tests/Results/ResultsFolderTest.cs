using CanopySim.Files.Results;
using Xunit;

namespace CanopySim.Files.Tests.Results;

public sealed class ResultsFolderTest : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("canopysim-").FullName;

    private string Out => Path.Combine(_root, "results", "block");

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void AppearsWhole()
    {
        using (var folder = ResultsFolder.Begin(Out))
        {
            Fill(folder, "first");
            Assert.False(Directory.Exists(Out));
            folder.Commit();
        }

        Assert.Equal(["charts", "days.csv", "summary.json"], Names(Out));
        Assert.Equal(["block"], Names(Path.GetDirectoryName(Out)!));
    }

    [Fact]
    public void OrNotAtAll()
    {
        using (var folder = ResultsFolder.Begin(Out)) Fill(folder, "first");
        Assert.Empty(Names(Path.GetDirectoryName(Out)!));
    }

    [Fact]
    public void ReplacesResultsOfOurs()
    {
        Write("first", alsoForecast: true);
        Write("second");
        Assert.Equal(["charts", "days.csv", "summary.json"], Names(Out));
        Assert.Contains("second", File.ReadAllText(Path.Combine(Out, "days.csv")));
        Assert.Equal(["block"], Names(Path.GetDirectoryName(Out)!));
    }

    [Fact]
    public void KeepsTheOldResultsWhereTheNewOnesFail()
    {
        Write("first");
        using (var folder = ResultsFolder.Begin(Out)) Fill(folder, "second");
        Assert.Contains("first", File.ReadAllText(Path.Combine(Out, "days.csv")));
    }

    [Fact]
    public void TakesAnEmptyFolder()
    {
        Directory.CreateDirectory(Out);
        Write("first");
        Assert.True(File.Exists(Path.Combine(Out, "summary.json")));
    }

    [Fact]
    public void ReplacesAComparisonWithItsOptions()
    {
        using (var folder = ResultsFolder.Begin(Out))
        {
            SummaryJson.WriteBrief(folder.File("summary.json"), "block", "compare");
            SummaryJson.WriteBrief(folder.File("option a/summary.json"), "a", "season");
            File.WriteAllText(folder.File("option a/days.csv"), "date\n");
            folder.Commit();
        }

        Write("second");
        Assert.Equal(["charts", "days.csv", "summary.json"], Names(Out));
    }

    [Theory]
    [InlineData("notes.txt", "\"notes.txt\"")]
    [InlineData("days.csv.bak", "\"days.csv.bak\"")]
    [InlineData("charts/mine.xlsx", "\"charts/mine.xlsx\"")]
    [InlineData("photos/block.png", "\"photos\"")]
    public void NeverRemovesWhatIsNotOurs(string file, string named)
    {
        Write("first");
        var foreign = Path.Combine(Out, file);
        Directory.CreateDirectory(Path.GetDirectoryName(foreign)!);
        File.WriteAllText(foreign, "mine");
        var error = Assert.Throws<InputError>(() => ResultsFolder.Begin(Out));
        Assert.Equal($"--out: the folder \"{Out}\" also holds {named}; expected a folder with nothing but results, so that no file of yours is removed", Whole(error));
        Assert.Equal("mine", File.ReadAllText(foreign));
    }

    [Fact]
    public void LooksAgainBeforeItReplaces()
    {
        Write("first");
        using var folder = ResultsFolder.Begin(Out);
        Fill(folder, "second");
        File.WriteAllText(Path.Combine(Out, "notes.txt"), "mine");
        Assert.Throws<InputError>(folder.Commit);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(Out, "notes.txt")));
    }

    [Theory]
    [InlineData("days.csv", "date\n")]
    [InlineData("summary.json", "{\"scenario\": \"other\"}")]
    [InlineData("summary.json", "[1]")]
    [InlineData("summary.json", "{")]
    public void RefusesAFolderOfSomebodyElse(string file, string text)
    {
        Directory.CreateDirectory(Out);
        File.WriteAllText(Path.Combine(Out, file), text);
        var error = Assert.Throws<InputError>(() => ResultsFolder.Begin(Out));
        Assert.Equal($"--out: the folder \"{Out}\" exists and holds no summary of ours; expected a new folder, or one that this program wrote", Whole(error));
        Assert.Equal([file], Names(Out));
    }

    [Fact]
    public void RefusesAFileAndALink()
    {
        File.WriteAllText(Path.Combine(_root, "file"), "");
        Assert.Contains("is a file", Assert.Throws<InputError>(() => ResultsFolder.Begin(Path.Combine(_root, "file"))).Message);
        Assert.Contains("cannot be written", Assert.Throws<InputError>(() => ResultsFolder.Begin(Path.Combine(_root, "file", "below"))).Message);
        Assert.Contains("no path", Assert.Throws<InputError>(() => ResultsFolder.Begin("")).Message);
        Write("first");
        Directory.CreateSymbolicLink(Path.Combine(_root, "link"), Out);
        Assert.Contains("is a link", Assert.Throws<InputError>(() => ResultsFolder.Begin(Path.Combine(_root, "link"))).Message);
        Assert.True(File.Exists(Path.Combine(Out, "days.csv")));
    }

    private void Write(string text, bool alsoForecast = false)
    {
        using var folder = ResultsFolder.Begin(Out);
        Fill(folder, text);
        if (alsoForecast) File.WriteAllText(folder.File("forecast.json"), "{}");
        folder.Commit();
    }

    private static void Fill(ResultsFolder folder, string text)
    {
        File.WriteAllText(folder.File("days.csv"), text);
        File.WriteAllText(folder.File("charts/season.png"), text);
        SummaryJson.WriteBrief(folder.File("summary.json"), text, "season");
    }

    // Long paths are shortened in messages.
    private string Whole(InputError error) => error.Message.Replace(InputError.Quote(Out), $"\"{Out}\"");

    private static string[] Names(string folder) => [.. Directory.GetFileSystemEntries(folder).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];
}
