using System.Text;
using CanopySim.Files.Text;

namespace CanopySim.Files.Results;

/// <summary>A column of a results table: its name and how a row's cell is written.</summary>
internal sealed record CsvColumn<T>(string Name, Func<T, string> Cell)
{
    /// <summary>A number to six significant digits.</summary>
    public static CsvColumn<T> Number(string name, Func<T, double> value) =>
        new(name, row => NumberText.Rounded(value(row), name));

    /// <summary>A number, or an empty cell where there is none.</summary>
    public static CsvColumn<T> Optional(string name, Func<T, double?> value) =>
        new(name, row => value(row) is double number ? NumberText.Rounded(number, name) : "");

    public static CsvColumn<T> Whole(string name, Func<T, long> value) =>
        new(name, row => NumberText.Whole(value(row)));

    /// <summary>
    /// Text, quoted where a separator or a quote is in it (RFC 4180), or where it would begin a comment.
    /// </summary>
    public static CsvColumn<T> Words(string name, Func<T, string> value) =>
        new(name, row =>
            value(row) is var text && (text.StartsWith('#') || text.AsSpan().IndexOfAny(",;\"") >= 0)
            ? $"\"{text.Replace("\"", "\"\"")}\"" : value(row));

    public static CsvColumn<T> Date(string name, Func<T, DateOnly> value) =>
        new(name, row => NumberText.Date(value(row)));
}

/// <summary>Writes tables of results.</summary>
internal static class CsvTable
{
    public static void Write<T>(string path, IReadOnlyList<CsvColumn<T>> columns, IEnumerable<T> rows)
    {
        using var file = new StreamWriter(
            path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false))
        { NewLine = "\n" };
        file.WriteLine(string.Join(',', columns.Select(column => column.Name)));
        foreach (var row in rows) file.WriteLine(string.Join(',', columns.Select(column => column.Cell(row))));
    }
}
