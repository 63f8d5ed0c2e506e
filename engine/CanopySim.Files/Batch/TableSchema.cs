using System.Security.Cryptography;
using System.Text;

namespace CanopySim.Files.Batch;

/// <summary>A column of a batch's table: numbers are always doubles, anything else is text; both may be null.</summary>
public readonly record struct TableColumn(string Name, bool IsNumber);

/// <summary>The columns of a table, the same in every file of a batch.</summary>
public sealed class TableSchema
{
    private readonly Dictionary<string, int> _indexOf = new(StringComparer.Ordinal);

    /// <exception cref="ArgumentException">Two columns have one name; case does not tell them apart.</exception>
    public TableSchema(IReadOnlyList<TableColumn> columns)
    {
        Columns = columns;
        var folded = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < columns.Count; i++)
        {
            if (!folded.Add(columns[i].Name))
                throw new ArgumentException($"two columns {columns[i].Name}", nameof(columns));
            _indexOf.Add(columns[i].Name, i);
        }

        var text = string.Concat(columns.Select(column => $"{column.Name}\t{(column.IsNumber ? "double" : "text")}\n"));
        Id = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..16];
    }

    public IReadOnlyList<TableColumn> Columns { get; }

    /// <summary>Names and kinds of the columns in 16 letters: tables with one id fit each other.</summary>
    public string Id { get; }

    /// <summary>Index of a column, or -1.</summary>
    public int IndexOf(string name) => _indexOf.GetValueOrDefault(name, -1);
}

/// <summary>A table in memory, column by column.</summary>
public sealed class TableData
{
    private readonly List<double?>?[] _numbers;
    private readonly List<string?>?[] _texts;

    public TableData(TableSchema schema)
    {
        Schema = schema;
        _numbers = [.. schema.Columns.Select(column => column.IsNumber ? new List<double?>() : null)];
        _texts = [.. schema.Columns.Select(column => column.IsNumber ? null : new List<string?>())];
    }

    public TableSchema Schema { get; }

    public int Rows { get; private set; }

    public IReadOnlyList<double?> Numbers(int column) => _numbers[column]!;

    public IReadOnlyList<string?> Texts(int column) => _texts[column]!;

    /// <summary>Adds a row: a double, a text or null for each column. What is no number becomes null.</summary>
    public void Add(IReadOnlyList<object?> row)
    {
        for (var column = 0; column < _numbers.Length; column++)
        {
            if (_numbers[column] is { } numbers) numbers.Add(row[column] is double value && double.IsFinite(value) ? value : null);
            else _texts[column]!.Add((string?)row[column]);
        }

        Rows++;
    }

    /// <summary>The cells of a row.</summary>
    public object?[] Row(int row) => [.. Schema.Columns.Select((column, i) =>
        column.IsNumber ? (object?)_numbers[i]![row] : _texts[i]![row])];

    /// <summary>Adds all rows of a table with the same columns.</summary>
    public void Append(TableData other)
    {
        if (other.Schema.Id != Schema.Id) throw new ArgumentException("a table with other columns", nameof(other));
        for (var column = 0; column < _numbers.Length; column++)
        {
            _numbers[column]?.AddRange(other._numbers[column]!);
            _texts[column]?.AddRange(other._texts[column]!);
        }

        Rows += other.Rows;
    }

    internal void AppendColumn(int column, double?[] values) => _numbers[column]!.AddRange(values);

    internal void AppendColumn(int column, string?[] values) => _texts[column]!.AddRange(values);

    internal void CountRows(int added) => Rows += added;
}
