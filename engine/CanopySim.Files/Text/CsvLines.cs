using System.Text;

namespace CanopySim.Files.Text;

/// <summary>
/// A table as separated text (RFC 4180 on single lines), read strictly line by line. A reader of our own because every
/// fault
/// must name its line and column, and a wrong quote must not swallow the lines after it.
/// </summary>
internal sealed class CsvLines
{
    private const int LongestLine = 100_000;

    private readonly byte[] _bytes;
    private readonly string _path;
    private readonly List<string> _cells = [];
    private char _separator = ',';
    private int _next;

    public CsvLines(byte[] bytes, string path) => (_bytes, _path) = (bytes, path);

    /// <summary>Number of the line last read, from 1.</summary>
    public int Line { get; private set; }

    public InputPlace Place => new(_path, Line);

    /// <summary>The next line as it stands, or null at the end.</summary>
    public string? NextLine()
    {
        if (_next >= _bytes.Length) return null;
        Line++;
        var length = StrictText.LineLength(_bytes, _next);
        if (length > LongestLine)
            throw new InputError(Place, $"a line of {length} bytes", $"lines of at most {LongestLine}");
        var text = StrictText.DecodeLine(_bytes.AsSpan(_next, length), _path, Line);
        _next += length + 1;
        StrictText.CheckControlCharacters(text, _path, Line);
        return text.TrimEnd('\r');
    }

    /// <summary>
    /// The header's cells; the separator is the one among comma, semicolon and tab that it holds most of.
    /// </summary>
    public IReadOnlyList<string> Header()
    {
        while (NextLine() is string line)
        {
            if (IsSkipped(line)) continue;
            _separator = new[] { ',', ';', '\t' }.MaxBy(separator => line.Count(letter => letter == separator));
            return [.. Split(line)];
        }

        throw new InputError(new InputPlace(_path, 1), "no header", "a first line with the names of the columns");
    }

    /// <summary>The next row's cells, trimmed, or null at the end. The list is used again for the row after.</summary>
    public IReadOnlyList<string>? NextRow()
    {
        while (NextLine() is string line)
            if (!IsSkipped(line)) return Split(line);
        return null;
    }

    // Blank lines and comments.
    private static bool IsSkipped(string line) => string.IsNullOrWhiteSpace(line) || line[0] == '#';

    private List<string> Split(string line)
    {
        _cells.Clear();
        var at = 0;
        while (true)
        {
            if (at < line.Length && line[at] == '"')
            {
                at = ReadQuoted(line, at + 1);
            }
            else
            {
                var end = line.IndexOf(_separator, at);
                if (end < 0) end = line.Length;
                var cell = line[at..end].Trim();
                if (cell.Contains('"'))
                    throw new InputError(
                        Place with { Column = _cells.Count + 1 },
                        $"a quote inside {InputError.Quote(cell)}",
                        "quotes around a whole cell");
                _cells.Add(cell);
                at = end;
            }

            if (at >= line.Length) return _cells;
            at++;
        }
    }

    // Returns the index of the separator after the closing quote, or the line's length.
    private int ReadQuoted(string line, int at)
    {
        var cell = new StringBuilder();
        for (; at < line.Length; at++)
        {
            if (line[at] != '"') cell.Append(line[at]);
            else if (at + 1 < line.Length && line[at + 1] == '"') cell.Append(line[at++]);
            else break;
        }

        var column = Place with { Column = _cells.Count + 1 };
        if (at >= line.Length)
            throw new InputError(column, "a quote that is not closed", "a closing quote on the same line");
        at++;
        if (at < line.Length && line[at] != _separator)
            throw new InputError(column, "text after a closing quote", "a separator");
        _cells.Add(cell.ToString().Trim());
        return at;
    }
}
