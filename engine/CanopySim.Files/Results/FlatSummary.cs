using System.Text.Json;

namespace CanopySim.Files.Results;

/// <summary>
/// The numbers and dates of a <c>summary.json</c> as cells of a table, named by their keys with dots between:
/// <c>harvest.sugar_brix</c>. What stands in a list is named by what it is and not by its place
/// (<see cref="FlatSummaryNames"/>): <c>ripening_carbon_by_leaf_age.60_to_70_d.share</c>. Digits stay as they are in
/// the file; null is an empty cell. Warnings are the one text that is kept.
/// </summary>
public static class FlatSummary
{
    private const string Dates = "dates";
    private const string Warnings = "warnings";

    /// <summary>Cells by name, in the order of the file.</summary>
    public static IReadOnlyDictionary<string, string> Of(string summaryJson)
    {
        using var json = JsonDocument.Parse(summaryJson);
        var cells = new Dictionary<string, string>();
        Add(cells, "", json.RootElement);
        return cells;
    }

    /// <summary>
    /// Names of all cells, each where its row first has it: after the cell before it there. A null stands aside where
    /// another row has an object under its name.
    /// </summary>
    public static IReadOnlyList<string> Columns(IReadOnlyList<IReadOnlyDictionary<string, string>> rows)
    {
        List<string> names = [];
        foreach (var row in rows)
        {
            var at = 0;
            foreach (var name in row.Keys)
            {
                var known = names.IndexOf(name);
                if (known < 0) names.Insert(at++, name);
                else at = known + 1;
            }
        }

        return [.. names.Where(name => !names.Any(other => other.StartsWith(name + ".", StringComparison.Ordinal)))];
    }

    private static void Add(Dictionary<string, string> cells, string name, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (var property in value.EnumerateObject())
                    Add(cells, Dotted(name, property.Name), property.Value);
                break;
            case JsonValueKind.Array:
                AddList(cells, name, value);
                break;
            case JsonValueKind.Number:
                cells[name] = value.GetRawText();
                break;
            case JsonValueKind.Null:
                cells[name] = "";
                break;
            case JsonValueKind.String when name.StartsWith(Dates + ".", StringComparison.Ordinal):
                cells[name] = value.GetString()!;
                break;
        }
    }

    private static void AddList(Dictionary<string, string> cells, string name, JsonElement list)
    {
        if (name == Warnings)
        {
            cells[name] = string.Join("; ", list.EnumerateArray().Select(item => item.GetString()));
            return;
        }

        foreach (var (index, item) in list.EnumerateArray().Index())
        {
            var (inner, inName) = FlatSummaryNames.Of(item, index);
            if (item.ValueKind != JsonValueKind.Object)
            {
                Add(cells, Dotted(name, inner), item);
                continue;
            }

            foreach (var property in item.EnumerateObject().Where(property => !inName.Contains(property.Name)))
                Add(cells, Dotted(Dotted(name, inner), property.Name), property.Value);
        }
    }

    private static string Dotted(string name, string inner) => name.Length == 0 ? inner : $"{name}.{inner}";
}
