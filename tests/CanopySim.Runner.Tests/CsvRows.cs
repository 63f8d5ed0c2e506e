using System.Text.RegularExpressions;

namespace CanopySim.Runner.Tests;

/// <summary>A table of results: its header line and its rows by column name.</summary>
internal sealed partial class CsvRows
{
    private readonly string[] _names;

    private CsvRows(string header, IReadOnlyList<string[]> rows) =>
        (Header, _names, Rows) = (header, header.Split(','), rows);

    public string Header { get; }

    public IReadOnlyList<string> Names => _names;

    public IReadOnlyList<string[]> Rows { get; }

    public static CsvRows Read(string path)
    {
        var lines = File.ReadAllLines(path);
        return new CsvRows(lines[0], [.. lines.Skip(1).Select(Cells)]);
    }

    /// <summary>Cells of a line; a comma between quotes parts none, and a quote in them is written twice.</summary>
    private static string[] Cells(string line) =>
        [.. Cell().Matches(line).Select(cell => cell.Groups["quoted"] is { Success: true } quoted
            ? quoted.Value.Replace("\"\"", "\"", StringComparison.Ordinal)
            : cell.Groups["plain"].Value)];

    public bool Has(string name) => _names.Contains(name);

    public IEnumerable<string> Column(string name)
    {
        var index = Array.IndexOf(_names, name);
        return Rows.Select(row => row[index]);
    }

    public IEnumerable<double> Numbers(string name) =>
        Column(name).Select(cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture));

    [GeneratedRegex("(?<=^|,)(?:\"(?<quoted>(?:[^\"]|\"\")*)\"|(?<plain>[^,]*))")]
    private static partial Regex Cell();
}
