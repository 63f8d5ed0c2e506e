namespace CanopySim.Runner.Tests.Learning;

/// <summary>The marked table in the README of a study: a column an option, a row a figure.</summary>
internal static class StudyTable
{
    private const string Begin = "<!-- table: made by tests/studies.sh -->\n";
    private const string End = "<!-- end of table -->";

    /// <param name="figures">The rows.</param>
    /// <param name="compared">What the comparison wrote as <c>compare.csv</c>.</param>
    public static string Of(IReadOnlyList<StudyFigure> figures, CsvRows compared)
    {
        List<string> lines =
        [
            Line(["", .. compared.Column("option")]),
            Line(["---", .. compared.Rows.Select(_ => "---:")]),
            .. figures.Select(figure =>
                Line([figure.Name, .. compared.Rows.Select((_, option) => figure.Text(compared, option))])),
        ];
        return string.Join('\n', lines) + '\n';
    }

    /// <summary>The table of a README.</summary>
    public static string In(string readme)
    {
        var (from, to) = Place(readme);
        return readme[from..to];
    }

    /// <summary>The README with its table replaced.</summary>
    public static string Put(string readme, string table)
    {
        var (from, to) = Place(readme);
        return readme[..from] + table + readme[to..];
    }

    private static string Line(IEnumerable<string> cells) => $"| {string.Join(" | ", cells)} |";

    private static (int From, int To) Place(string readme)
    {
        var begin = readme.IndexOf(Begin, StringComparison.Ordinal);
        var end = readme.IndexOf(End, StringComparison.Ordinal);
        if (begin < 0 || end < begin) throw new InvalidOperationException($"the README lacks {Begin} or {End}");
        return (begin + Begin.Length, end);
    }
}
