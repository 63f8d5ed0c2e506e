namespace CanopySim.Runner.Tests.Validation;

/// <summary>The marked section of README.md: how many published figures the model met, by what they can prove.</summary>
internal static class ReadmeSummary
{
    private const string Begin = "<!-- validation: made by tests/validation.sh -->";
    private const string End = "<!-- end of validation -->";

    public static string Of(ValidationPage page)
    {
        string Count(Standing standing, Verdict verdict) =>
            $"{page.Findings.Count(finding => finding.Standing == standing && finding.Verdict == verdict)}";
        var table = ValidationPage.Table(
            ["figures", "passed", "failed"],
            new[] { Standing.Predicted, Standing.CommonPractice, Standing.Watched, Standing.Fitted, Standing.Arithmetic }
                .Select(standing => new[] { ValidationPage.Words(standing), Count(standing, Verdict.Passed), Count(standing, Verdict.Failed) }));
        return $"""
            Held against published figures, each with its source in [tests/VALIDATION.md](tests/VALIDATION.md); `bash tests/validation.sh`
            makes that page anew. *Predicted*: nothing was fitted to the figure. *Common practice*: what the trade says, without a source.
            *Fitted*: parameters were turned to meet it; *arithmetic* follows from those.

            {table}{page.Failures()}
            """.Replace("\r", "", StringComparison.Ordinal);
    }

    /// <summary>The marked section of a README.</summary>
    public static string In(string readme)
    {
        var (from, to) = Place(readme);
        return readme[from..to];
    }

    /// <summary>The README with its section replaced.</summary>
    public static string Put(string readme, string summary)
    {
        var (from, to) = Place(readme);
        return readme[..from] + summary + readme[to..];
    }

    private static (int From, int To) Place(string readme)
    {
        var (begin, end) = (readme.IndexOf(Begin, StringComparison.Ordinal), readme.IndexOf(End, StringComparison.Ordinal));
        if (begin < 0 || end < begin) throw new InvalidOperationException($"README.md lacks {Begin} or {End}");
        return (begin + Begin.Length + 1, end);
    }
}
