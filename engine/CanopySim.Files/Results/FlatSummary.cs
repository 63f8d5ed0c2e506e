using System.Text.Json;

namespace CanopySim.Files.Results;

/// <summary>
/// The numbers and dates of a <c>summary.json</c> as cells of a table, named by their keys with dots between:
/// <c>harvest.sugar_brix</c>,
/// <c>ripening_carbon_by_leaf_age.0.share</c>. Digits stay as they are in the file; null is an empty cell.
/// </summary>
public static class FlatSummary
{
    private const string Dates = "dates";

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
                foreach (var (index, item) in value.EnumerateArray().Index())
                    Add(cells, Dotted(name, FormattableString.Invariant($"{index}")), item);
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

    private static string Dotted(string name, string inner) => name.Length == 0 ? inner : $"{name}.{inner}";
}
