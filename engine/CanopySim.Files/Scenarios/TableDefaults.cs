using System.Globalization;
using CanopySim.Parameters;
using CanopySim.Phenology;

namespace CanopySim.Files.Scenarios;

/// <summary>Defaults that a scenario takes from the table of cultivars, where it names one.</summary>
internal sealed class TableDefaults
{
    private const string Section = "cultivar";
    private const string NameKey = "cultivar.name";

    private readonly CultivarRow? _row;
    private readonly Dictionary<string, MarkedValue> _numbers = new(StringComparer.Ordinal);

    private TableDefaults(KnownCultivar? cultivar)
    {
        if (cultivar is not { } known) return;
        _row = CultivarTable.Of(known);
        foreach (var value in CultivarTable.ValuesOf(known)) _numbers.Add(value.Key, value.Number);
    }

    public static TableDefaults None { get; } = new(null);

    /// <summary>
    /// The defaults of a scenario's cultivar; none where it names none. A name that is not in the table is told when it
    /// is read.
    /// </summary>
    public static TableDefaults For(MapNode root)
    {
        if (root.Find(Section)?.Value is not MapNode section) return None;
        if (section.Find(KeyNames.Snake(nameof(Cultivar.FromTable)))?.Value is not ValueNode named) return None;
        var index = KeyNames.Choices(typeof(KnownCultivar)).ToList().IndexOf(named.Text);
        return index < 0 ? None : new TableDefaults((KnownCultivar)index);
    }

    /// <summary>
    /// The table's value for a key that a scenario leaves out, and the line that says so; null where it has none.
    /// </summary>
    public (object Value, UnderstoodValue Understood)? Find(string key, KeyShape shape)
    {
        if (_row is null) return null;
        var where = $"cultivar {_row.Name}";
        if (key == NameKey)
            return (_row.Name, new UnderstoodValue(key, _row.Name, Mark.Given, "", where, shape.Help));
        if (!_numbers.TryGetValue(key, out var number)) return null;
        var value = Convert.ChangeType(number.Value, shape.ValueType, CultureInfo.InvariantCulture);
        var source = number.Mark is Mark.Fitted or Mark.Published ? number.Source : $"{_row.Name}: {number.Source}";
        return (value,
            new UnderstoodValue(key, ValueReader.Show(value, shape), number.Mark, source, where, shape.Help));
    }
}
