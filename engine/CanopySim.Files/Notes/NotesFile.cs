using CanopySim.Files.Text;

namespace CanopySim.Files.Notes;

/// <summary>
/// Reads field notes: a sheet with a line for each thing seen (columns date, vine, shoot, what, value, unit, note, in any
/// order), or with a column for each (date, vine, shoot, shoot_length [cm], nodes …). An empty date is that of the line
/// above, an empty value nothing; what is written is read strictly.
/// </summary>
public static class NotesFile
{
    private const int LargestFile = 5_000_000;
    private const int MostNotes = 50_000;

    private static readonly Dictionary<string, string[]> Columns = new(StringComparer.Ordinal)
    {
        ["date"] = ["date", "day", "when"],
        ["vine"] = ["vine", "plant"],
        ["shoot"] = ["shoot", "shoot number", "shoot name"],
        ["what"] = ["what", "measured", "observation"],
        ["value"] = ["value", "reading", "amount"],
        ["unit"] = ["unit", "units"],
        ["note"] = ["note", "notes", "remark", "remarks", "comment", "comments"],
    };

    /// <summary>Reads a file of field notes whole.</summary>
    /// <exception cref="InputError">Anything in it is wrong; the first thing is told.</exception>
    public static FieldNotes Read(string path) =>
        Read(StrictText.ReadBytes(path, new InputPlace(path), LargestFile, "field notes"), path);

    /// <summary>Reads the bytes of a file of field notes.</summary>
    /// <exception cref="InputError">Anything in it is wrong; the first thing is told.</exception>
    public static FieldNotes Read(byte[] bytes, string path)
    {
        var lines = new CsvLines(bytes, path);
        var sheet = Sheet.Of([.. lines.Header()], lines.Place);
        var rows = new List<(InputPlace Place, string[] Cells)>();
        while (lines.NextRow() is { } cells)
        {
            if (cells.Count > sheet.Width)
                throw new InputError(lines.Place, $"{cells.Count} cells", $"{sheet.Width}, as in the header");
            if (rows.Count == MostNotes)
                throw new InputError(lines.Place, $"more than {MostNotes} lines", "the notes of one season");
            // A sheet that leaves out what is empty at the end of a line means nothing by it.
            rows.Add((lines.Place, [.. cells, .. Enumerable.Repeat("", sheet.Width - cells.Count)]));
        }

        var dates = NoteDates.Of(rows.Select(row => (row.Cells[sheet.Date], row.Place with { Column = sheet.Date + 1 })));
        return Understand(sheet, rows, dates);
    }

    private static FieldNotes Understand(Sheet sheet, List<(InputPlace Place, string[] Cells)> rows, NoteDates dates)
    {
        var (notes, remarks) = (new List<FieldNote>(), new List<string>());
        DateOnly? date = null;
        foreach (var (place, cells) in rows)
        {
            if (cells.All(cell => cell.Length == 0)) continue;
            var dateCell = place with { Column = sheet.Date + 1 };
            if (cells[sheet.Date].Length > 0) date = dates.Read(cells[sheet.Date], dateCell);
            if (date is not { } day) throw new InputError(dateCell, "no date", "the day of the note", "date");
            var remark = sheet.Note is { } column ? cells[column] : "";
            var before = notes.Count;
            foreach (var (kind, value, unit, at) in sheet.Said(cells, place))
            {
                var note = new FieldNote
                {
                    Place = place with { Column = at + 1 },
                    Date = day,
                    Vine = Cell(sheet.Vine, cells),
                    Shoot = Cell(sheet.Shoot, cells),
                    Kind = kind,
                    Remark = remark,
                };
                notes.Add(NoteValues.Read(note, value, unit, sheet.Headers[at]));
            }

            if (notes.Count > before) continue;
            if (remark.Length == 0)
                throw new InputError(place, "a line that says nothing", "a value, or a note", "what");
            remarks.Add($"{day:yyyy-MM-dd}: {remark}");
        }

        CheckTwice(notes);
        return new FieldNotes([.. notes.OrderBy(note => note.Date)], remarks);
    }

    // A shoot has one length a day. Nameless shoots may be noted again and again.
    private static void CheckTwice(List<FieldNote> notes)
    {
        var seen = new Dictionary<(DateOnly, string, string, NoteKind), FieldNote>();
        foreach (var note in notes)
        {
            if (note.Shoot.Length == 0 || note.Kind is NoteKind.LeafSize or NoteKind.Spray or NoteKind.Irrigation) continue;
            if (seen.TryAdd((note.Date, note.Vine, note.Shoot, note.Kind), note)) continue;
            var first = seen[(note.Date, note.Vine, note.Shoot, note.Kind)];
            throw new InputError(
                note.Place,
                $"{NoteKinds.Of(note.Kind).Name} of shoot {InputError.Quote(note.Shoot)} a second time on {note.Date:yyyy-MM-dd}, "
                    + $"after line {first.Place.Line}",
                "one value for a shoot and a day");
        }
    }

    private static string Cell(int? column, string[] cells) => column is { } at ? cells[at] : "";

    /// <summary>Which column holds what.</summary>
    private sealed class Sheet
    {
        private int? _what;
        private int? _value;
        private int? _unit;
        private readonly List<(int At, NoteKind Kind, string Unit)> _kinds = [];

        private Sheet(string[] headers) => Headers = headers;

        public string[] Headers { get; }

        public int Width => Headers.Length;

        public int Date { get; private set; }

        public int? Vine { get; private set; }

        public int? Shoot { get; private set; }

        public int? Note { get; private set; }

        public static Sheet Of(string[] headers, InputPlace place)
        {
            var sheet = new Sheet(headers);
            var found = new Dictionary<string, int>(StringComparer.Ordinal);
            for (var i = 0; i < headers.Length; i++)
            {
                var cell = place with { Column = i + 1 };
                var (name, unit) = Weather.WeatherHeader.SplitUnit(headers[i]);
                var plain = name.Trim().ToLowerInvariant().Replace('_', ' ');
                if (plain.Length == 0) throw new InputError(cell, "a column without a name", "a name in each column");
                if (Columns.FirstOrDefault(column => column.Value.Contains(plain)).Key is { } known)
                {
                    if (!found.TryAdd(known, i))
                        throw new InputError(cell, $"{known} a second time", "one column for it", headers[i]);
                }
                else if (NoteKinds.Find(name) is { } word)
                {
                    sheet._kinds.Add((i, word.Kind, unit ?? ""));
                }
                else
                {
                    throw new InputError(
                        cell, "an unknown header", $"one of {string.Join(", ", Columns.Keys.Concat(NoteKinds.Names))}",
                        headers[i], NearestName.Among(plain, Columns.Keys) ?? NoteKinds.Nearest(name));
                }
            }

            sheet.Take(found, place);
            return sheet;
        }

        private void Take(Dictionary<string, int> found, InputPlace place)
        {
            Date = found.TryGetValue("date", out var date)
                ? date
                : throw new InputError(place, "no column for date", "one of that name", "header");
            (Vine, Shoot, Note) = (At("vine"), At("shoot"), At("note"));
            (_what, _value, _unit) = (At("what"), At("value"), At("unit"));
            if (_what is null != _value is null)
            {
                throw new InputError(
                    place, _what is null ? "a column value without one for what" : "a column what without one for value",
                    "both", "header");
            }

            if (_what is null && _kinds.Count == 0)
                throw new InputError(place, "no column that says anything", "what and value, or columns such as shoot_length [cm]", "header");
            if (_unit is not null && _what is null)
                throw new InputError(place, "a column unit without one for what", "units in the headers, such as shoot_length [cm]", "header");

            int? At(string name) => found.TryGetValue(name, out var at) ? at : null;
        }

        /// <summary>What a line says: kind, value, unit and the column of the value.</summary>
        public IEnumerable<(NoteKind Kind, string Value, string Unit, int At)> Said(string[] cells, InputPlace place)
        {
            if (_what is { } what)
            {
                var value = cells[_value!.Value];
                var unit = Cell(_unit, cells);
                if (cells[what].Length > 0)
                {
                    var word = NoteKinds.Find(cells[what]) ?? throw new InputError(
                        place with { Column = what + 1 }, $"unknown {InputError.Quote(cells[what])}",
                        $"one of {string.Join(", ", NoteKinds.Names)}", Headers[what], NoteKinds.Nearest(cells[what]));
                    yield return (word.Kind, value, unit, _value.Value);
                }
                else if (value.Length > 0 || unit.Length > 0)
                {
                    throw new InputError(
                        place with { Column = what + 1 }, "a value that is of nothing",
                        $"one of {string.Join(", ", NoteKinds.Names)}", Headers[what]);
                }
            }

            foreach (var (at, kind, unit) in _kinds)
                if (cells[at].Length > 0)
                    yield return (kind, cells[at], unit, at);
        }
    }
}
