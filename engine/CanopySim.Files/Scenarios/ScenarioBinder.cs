using System.Globalization;
using CanopySim.Files.Quantities;
using CanopySim.Files.Text;
using CanopySim.Parameters;

namespace CanopySim.Files.Scenarios;

/// <summary>Makes the model's records from a scenario's nodes, and keeps where every value came from.</summary>
internal sealed class ScenarioBinder(string file)
{
    private readonly List<UnderstoodValue> _values = [];
    private readonly Dictionary<string, InputPlace> _places = new(StringComparer.Ordinal);
    private TableDefaults _table = TableDefaults.None;
    private SectionShape _root = SectionShape.Root;

    public IReadOnlyList<UnderstoodValue> Values => _values;

    public Scenario Bind(MapNode root)
    {
        _table = TableDefaults.For(root);
        return Bind<Scenario>(root);
    }

    /// <summary>The record of a file that is read like a scenario, by the properties of its type.</summary>
    public T Bind<T>(MapNode root)
    {
        _root = SectionShape.Of(typeof(T));
        return (T)BindSection(_root, root, "", new InputPlace(file));
    }

    /// <summary>Where a key stands; for one that was left out, where its section does.</summary>
    public InputPlace PlaceOf(string key)
    {
        for (var rest = key; rest.Length > 0; rest = rest.LastIndexOf('.') is var dot and >= 0 ? rest[..dot] : "")
            if (_places.TryGetValue(rest, out var place)) return place;
        return new InputPlace(file);
    }

    /// <summary>True where a key stands in a file or on the command line.</summary>
    public bool IsGiven(string key) => _places.ContainsKey(key);

    private object BindSection(SectionShape shape, ScenarioNode? node, string path, InputPlace place)
    {
        var map = node switch
        {
            MapNode found => found,
            // A section whose lines are all commented out gives nothing.
            null or ValueNode { IsEmpty: true } => new MapNode(place, []),
            _ => throw new InputError(place, node.Kind, $"the keys of {path}: {Names(shape)}", path),
        };
        foreach (var entry in map.Entries)
            if (shape.Find(entry.Key) is null) throw UnknownKey(entry, shape, path);
        var section = Activator.CreateInstance(shape.Type)!;
        foreach (var key in shape.Keys)
        {
            var dotted = path.Length == 0 ? key.Name : $"{path}.{key.Name}";
            var entry = map.Find(key.Name);
            if (entry is not null) _places[dotted] = entry.Place;
            if (key.Kind == KeyKind.Section)
            {
                key.Property.SetValue(
                    section, BindSection(SectionShape.Of(key.ValueType), entry?.Value, dotted, entry?.Place ?? place));
            }
            else if (entry is null)
            {
                if (key.IsRequired) throw new InputError(place, "missing", $"{Example(key)} ({key.Help})", dotted);
                if (_table.Find(dotted, key) is { } known)
                {
                    key.Property.SetValue(section, known.Value);
                    _values.Add(known.Understood);
                }
                else
                {
                    NoteDefault(key, dotted);
                }
            }
            else
            {
                key.Property.SetValue(section, BindValue(key, entry, dotted));
            }
        }

        return section;
    }

    private object BindValue(KeyShape key, MapEntry entry, string dotted) => key.Kind switch
    {
        KeyKind.SectionList => BindSections(key, entry, dotted),
        KeyKind.RowList => BindRows(key, entry, dotted),
        KeyKind.TextList => BindTexts(key, entry, dotted),
        KeyKind.TextMap => BindTextMap(key, entry, dotted),
        KeyKind.SectionMap => BindSectionMap(key, entry, dotted),
        _ => BindSingle(key, entry, dotted),
    };

    private object BindSingle(KeyShape key, MapEntry entry, string dotted)
    {
        if (entry.Value is not ValueNode node)
            throw new InputError(entry.Place, entry.Value.Kind, Example(key), dotted);
        var value = ValueReader.Read(node, key, entry.Place, dotted);
        NoteGiven(key, dotted, ValueReader.Show(value, key), entry.Place);
        return value;
    }

    private Array BindSections(KeyShape key, MapEntry entry, string dotted)
    {
        var items = Items(entry, dotted);
        var array = Array.CreateInstance(key.ValueType, items.Count);
        for (var i = 0; i < items.Count; i++)
        {
            var path = string.Create(CultureInfo.InvariantCulture, $"{dotted}.{i}");
            var place = items[i].Place with { Column = null };
            _places[path] = place;
            if (items[i] is not MapNode)
                throw new InputError(place, items[i].Kind, $"the keys {Names(SectionShape.Of(key.ValueType))}", path);
            array.SetValue(BindSection(SectionShape.Of(key.ValueType), items[i], path, place), i);
        }

        if (items.Count == 0) NoteGiven(key, dotted, "none", entry.Place);
        return array;
    }

    // A row is a list of quantities in the order of its type's properties, each with its own unit: [30 d, 0.9].
    private Array BindRows(KeyShape key, MapEntry entry, string dotted)
    {
        var shape = RowShape.Of(key.ValueType);
        var items = Items(entry, dotted);
        var array = Array.CreateInstance(key.ValueType, items.Count);
        for (var i = 0; i < items.Count; i++)
        {
            var path = string.Create(CultureInfo.InvariantCulture, $"{dotted}.{i}");
            var place = items[i].Place with { Column = null };
            _places[path] = place;
            if (items[i] is not ListNode list || list.Items.Count != shape.Parameters.Count)
                throw new InputError(
                    place,
                    items[i] is ListNode wrong ? $"a list of {wrong.Items.Count}" : items[i].Kind,
                    $"a list such as {shape.Example}",
                    path);
            var values = new object[list.Items.Count];
            for (var j = 0; j < values.Length; j++)
            {
                var cell = list.Items[j];
                var cellPath = $"{path}.{shape.Names[j]}";
                if (cell is not ValueNode value)
                    throw new InputError(
                        cell.Place with { Column = null }, cell.Kind, $"a list such as {shape.Example}", cellPath);
                values[j] = ValueReader.Quantity(
                    value.Text, shape.Parameters[j], typeof(double), cell.Place with { Column = null }, cellPath);
            }

            array.SetValue(shape.Create(values), i);
        }

        NoteGiven(key, dotted, shape.Show(array), entry.Place);
        return array;
    }

    // A single value is a list of one.
    private string[] BindTexts(KeyShape key, MapEntry entry, string dotted)
    {
        var items = entry.Value is ValueNode { IsEmpty: false } single ? [single] : Items(entry, dotted);
        var texts = new string[items.Count];
        for (var i = 0; i < texts.Length; i++)
        {
            var path = string.Create(CultureInfo.InvariantCulture, $"{dotted}.{i}");
            var place = items[i].Place with { Column = null };
            _places[path] = place;
            if (items[i] is not ValueNode value) throw new InputError(place, items[i].Kind, "text", path);
            texts[i] = ValueReader.Text(value.Text, place, path);
        }

        NoteGiven(key, dotted, texts.Length == 0 ? "none" : string.Join(", ", texts), entry.Place);
        return texts;
    }

    private System.Collections.IDictionary BindSectionMap(KeyShape key, MapEntry entry, string dotted)
    {
        var map = MapOf(entry, dotted);
        var sections = (System.Collections.IDictionary)Activator.CreateInstance(
            typeof(Dictionary<,>).MakeGenericType(typeof(string), key.ValueType))!;
        foreach (var item in map.Entries)
        {
            var path = $"{dotted}.{item.Key}";
            _places[path] = item.Place;
            sections.Add(item.Key, BindSection(SectionShape.Of(key.ValueType), item.Value, path, item.Place));
        }

        return sections;
    }

    private Dictionary<string, string> BindTextMap(KeyShape key, MapEntry entry, string dotted)
    {
        var map = MapOf(entry, dotted);
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var item in map.Entries)
        {
            var path = $"{dotted}.{item.Key}";
            _places[path] = item.Place;
            if (item.Value is not ValueNode value) throw new InputError(item.Place, item.Value.Kind, "text", path);
            texts.Add(item.Key, ValueReader.Text(value.Text, item.Place, path));
            NoteGiven(key, path, value.Text, item.Place);
        }

        return texts;
    }

    private static MapNode MapOf(MapEntry entry, string dotted) => entry.Value switch
    {
        MapNode found => found,
        ValueNode { IsEmpty: true } => new MapNode(entry.Place, []),
        _ => throw new InputError(entry.Place, entry.Value.Kind, "keys with values", dotted),
    };

    private static IReadOnlyList<ScenarioNode> Items(MapEntry entry, string dotted) => entry.Value switch
    {
        ListNode list => list.Items,
        ValueNode { IsEmpty: true } => [],
        _ => throw new InputError(entry.Place, entry.Value.Kind, "a list", dotted),
    };

    private InputError UnknownKey(MapEntry entry, SectionShape shape, string path)
    {
        var names = shape.Keys.Select(key => key.Name).ToList();
        var nearest = NearestName.Among(entry.Key, names) ?? ElsewhereKnown(_root, entry.Key, "");
        return new InputError(
            entry.Place, $"unknown key {InputError.Quote(entry.Key)}", $"one of {Names(shape)}", path.Length == 0
                ? entry.Key
                : $"{path}.{entry.Key}", nearest);
    }

    // A right key in the wrong section.
    private static string? ElsewhereKnown(SectionShape shape, string name, string path)
    {
        foreach (var key in shape.Keys)
        {
            var dotted = path + key.Name;
            if (key.Name == name) return dotted;
            if (key.Kind == KeyKind.Section
                    && ElsewhereKnown(SectionShape.Of(key.ValueType), name, dotted + ".") is string found)
                return found;
        }

        return null;
    }

    private static string Names(SectionShape shape) => string.Join(", ", shape.Keys.Select(key => key.Name));

    private static string Example(KeyShape key) => key.Kind switch
    {
        KeyKind.Quantity => $"a quantity, {QuantityText.Range(key.Parameter!)}",
        KeyKind.Text => "text",
        KeyKind.Date => "a date such as 2024-04-15",
        KeyKind.Flag => "true or false",
        KeyKind.Choice => $"one of {string.Join(", ", KeyNames.Choices(key.ValueType))}",
        KeyKind.TextList => "a list of texts",
        _ => "a whole number",
    };

    private void NoteGiven(KeyShape key, string dotted, string text, InputPlace place) =>
        _values.Add(new UnderstoodValue(dotted, text, Mark.Given, "", place.ToString(), key.Help));

    private void NoteDefault(KeyShape key, string dotted)
    {
        var (mark, source) = (key.Parameter?.Mark ?? Mark.Assumed, key.Parameter?.Source ?? "");
        var text = ValueReader.Show(key.Default, key);
        if (key.Kind == KeyKind.RowList)
        {
            var shape = RowShape.Of(key.ValueType);
            (mark, source, text) = (
                shape.Parameters[^1].Mark,
                shape.Parameters[^1].Source,
                shape.Show((System.Collections.IEnumerable)key.Default!));
        }
        else if (key.Kind is KeyKind.SectionList or KeyKind.TextList or KeyKind.TextMap or KeyKind.SectionMap)
        {
            text = "none";
        }

        // A value that is the grower's to give, and was not given, is assumed.
        if (mark == Mark.Given) mark = Mark.Assumed;
        _values.Add(new UnderstoodValue(dotted, text, mark, source, "default", key.Help));
    }
}
