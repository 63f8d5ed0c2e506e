namespace CanopySim.Runner.Tests;

/// <summary>A table of results: its header line and its rows by column name.</summary>
internal sealed class CsvRows
{
    private readonly string[] _names;

    private CsvRows(string header, IReadOnlyList<string[]> rows) => (Header, _names, Rows) = (header, header.Split(','), rows);

    public string Header { get; }

    public IReadOnlyList<string[]> Rows { get; }

    public static CsvRows Read(string path)
    {
        var lines = File.ReadAllLines(path);
        return new CsvRows(lines[0], [.. lines.Skip(1).Select(line => line.Split(','))]);
    }

    public bool Has(string name) => _names.Contains(name);

    public IEnumerable<string> Column(string name)
    {
        var index = Array.IndexOf(_names, name);
        return Rows.Select(row => row[index]);
    }

    public IEnumerable<double> Numbers(string name) =>
        Column(name).Select(cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture));
}
