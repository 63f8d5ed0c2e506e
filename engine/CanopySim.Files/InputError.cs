namespace CanopySim.Files;

/// <summary>
/// Input that cannot be used. <see cref="Exception.Message"/> is one line that says where, what was found and what is
/// expected: <c>block.yaml:12: rows.spaceing: unknown key "spaceing"; expected one of …; did you mean "spacing"?</c>
/// </summary>
public sealed class InputError : Exception
{
    private const int LongestPart = 900;

    public InputError(InputPlace place, string found, string expected, string? key = null, string? nearest = null)
        : base(Compose(place, found, expected, key, nearest))
    {
        (File, Line, Column) = (place.File, place.Line, place.Column);
        (Key, Found, Expected, Nearest) = (key, found, expected, nearest);
    }

    /// <summary>The file, as the user wrote its path; or the option of the command line.</summary>
    public string File { get; }

    public int? Line { get; }

    /// <summary>Column of a table, or of a letter in a line, from 1.</summary>
    public int? Column { get; }

    /// <summary>Dotted scenario key, or header of a table's column.</summary>
    public string? Key { get; }

    public string Found { get; }

    public string Expected { get; }

    /// <summary>The known name that comes closest to an unknown one.</summary>
    public string? Nearest { get; }

    private static string Compose(InputPlace place, string found, string expected, string? key, string? nearest)
    {
        var where = (place.Column, key) switch
        {
            (int column, string header) => $"column {column} ({header}): ",
            (int column, null) => $"column {column}: ",
            (null, string dotted) => $"{dotted}: ",
            _ => "",
        };
        var hint = nearest is null ? "" : $"; did you mean \"{nearest}\"?";
        return OneLine($"{place}: {where}{found}; expected {expected}{hint}");
    }

    /// <summary>Text of the user's, in quotes, short and without what would break a line or a terminal.</summary>
    public static string Quote(string text)
    {
        var shown = text.Length > 60 ? string.Concat(text.AsSpan(0, 57), "...") : text;
        return $"\"{OneLine(shown)}\"";
    }

    private static string OneLine(string text)
    {
        var clean = string.Create(text.Length, text, static (target, source) =>
        {
            for (var i = 0; i < target.Length; i++)
                target[i] = char.IsControl(source[i]) || source[i] is '\u2028' or '\u2029' ? ' ' : source[i];
        });
        return clean.Length > LongestPart ? string.Concat(clean.AsSpan(0, LongestPart), "...") : clean;
    }
}

/// <summary>A place in a file: its path as the user wrote it, line and column from 1 where they are known.</summary>
public readonly record struct InputPlace(string File, int? Line = null, int? Column = null)
{
    public override string ToString() => Line is int line ? $"{File}:{line}" : File;
}
