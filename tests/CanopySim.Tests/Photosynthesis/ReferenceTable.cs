using System.Globalization;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>A table beside the tests: a header line, then rows of numbers and names.</summary>
internal sealed class ReferenceTable
{
    private readonly Dictionary<string, int> _columns;
    private readonly string[][] _rows;

    private ReferenceTable(string[] lines)
    {
        _columns = lines[0].Split(',').Select((name, index) => (name, index)).ToDictionary(c => c.name, c => c.index);
        _rows = [.. lines.Skip(1).Where(line => line.Length > 0).Select(line => line.Split(','))];
    }

    public int Count => _rows.Length;

    public static ReferenceTable Read(string name) =>
        new(File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Photosynthesis", name)));

    public double Number(int row, string column) => double.Parse(Text(row, column), CultureInfo.InvariantCulture);

    public string Text(int row, string column) => _rows[row][_columns[column]];

    /// <summary>Half a unit of the last printed digit, or 1e-4 of the value where that is more.</summary>
    public double Tolerance(int row, string column)
    {
        var text = Text(row, column);
        var decimals = text.Length - text.IndexOf('.') - 1;
        return Math.Max(0.501 * Math.Pow(10, -decimals), 1e-4 * Math.Abs(Number(row, column)));
    }
}
