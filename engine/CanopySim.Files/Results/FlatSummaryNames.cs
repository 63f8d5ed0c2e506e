using System.Text.Json;

namespace CanopySim.Files.Results;

/// <summary>
/// What an item of a list of <c>summary.json</c> is called in a table, so that a column means the same in every file.
/// </summary>
/// <remarks>
/// <list type="bullet">
/// <item>A class of leaf age: <c>60_to_70_d</c>, its ages in days; the last one, that has no end, <c>from_160_d</c>.
/// </item>
/// <item>A side of a wall: <c>wall_1_east</c>, the wall's number and where the side looks.</item>
/// <item>An item of the scorecard: its own name, <c>leaf_layers</c>.</item>
/// <item>Anything else: its place, from 0.</item>
/// </list>
/// </remarks>
internal static class FlatSummaryNames
{
    // The last class of leaf age is open and ends where no leaf comes to [d].
    private const int WidestClosedClass = 10;

    /// <summary>The name, and the keys of the item that are said by it.</summary>
    public static (string Name, IReadOnlyList<string> Keys) Of(JsonElement item, int index)
    {
        if (item.ValueKind != JsonValueKind.Object) return (Place(index), []);
        if (Whole(item, "from_d") is { } from && Whole(item, "to_d") is { } to)
        {
            var ages = to - from <= WidestClosedClass ? $"{from}_to_{to}_d" : $"from_{from}_d";
            return (ages, ["from_d", "to_d"]);
        }

        if (Whole(item, "wall") is { } wall && Text(item, "facing") is { } facing)
            return ($"wall_{wall}_{facing}", ["wall", "side", "facing", "part_of_day"]);
        return Text(item, "item") is { } name ? (name, ["item"]) : (Place(index), []);
    }

    private static string Place(int index) => FormattableString.Invariant($"{index}");

    private static int? Whole(JsonElement item, string key) =>
        item.TryGetProperty(key, out var value) && value.TryGetInt32(out var number) ? number : null;

    private static string? Text(JsonElement item, string key) =>
        item.TryGetProperty(key, out var value) ? value.GetString() : null;
}
