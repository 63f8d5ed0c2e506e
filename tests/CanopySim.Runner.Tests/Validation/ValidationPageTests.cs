using Xunit;

namespace CanopySim.Runner.Tests.Validation;

/// <summary>
/// The validation page and the README's summary of it are what the model gives now. <c>tests/validation.sh</c> runs this with
/// <c>CANOPYSIM_VALIDATION</c> set: "write" writes both, names of studies make those sections alone, for a look.
/// </summary>
public class ValidationPageTests
{
    private const string Command = "bash tests/validation.sh";
    private const string Write = "write";

    private static readonly string Page = Path.Combine(RunnerProcess.Repository, "tests", "VALIDATION.md");
    private static readonly string Readme = Path.Combine(RunnerProcess.Repository, "README.md");
    private static readonly string Made = Path.Combine(AppContext.BaseDirectory, "VALIDATION.md");

    [Fact]
    public void The_page_says_what_the_model_gives()
    {
        var asked = Environment.GetEnvironmentVariable("CANOPYSIM_VALIDATION") ?? "";
        var page = ValidationPage.Of(asked is "" or Write ? ValidationPage.AllStudies : Named(asked));
        var text = page.Markdown();
        File.WriteAllText(Made, text);
        if (asked is not ("" or Write)) return;

        var readme = File.ReadAllText(Readme);
        if (asked == Write)
        {
            File.WriteAllText(Page, text);
            File.WriteAllText(Readme, ReadmeSummary.Put(readme, ReadmeSummary.Of(page)));
            return;
        }

        Assert.True(File.Exists(Page), $"no tests/VALIDATION.md: make it with {Command}");
        AssertAgree("tests/VALIDATION.md", File.ReadAllText(Page), text);
        AssertAgree("README.md", ReadmeSummary.In(readme), ReadmeSummary.Of(page));
    }

    private static void AssertAgree(string name, string committed, string made)
    {
        var differences = PageComparison.Differences(committed, made);
        Assert.True(
            differences.Count == 0,
            $"{name} is not what the model gives now ({differences.Count} lines). The new page is {Made}; write it with {Command}\n"
            + string.Join('\n', differences.Take(20)));
    }

    private static IReadOnlyList<Study> Named(string names) => [.. names.Split(' ').Select(name =>
        ValidationPage.AllStudies.SingleOrDefault(study => study.GetType().Name == name)
        ?? throw new ArgumentException(
            $"no study '{name}'; there are {string.Join(", ", ValidationPage.AllStudies.Select(study => study.GetType().Name))}"))];
}
