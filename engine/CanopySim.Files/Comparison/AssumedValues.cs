using CanopySim.Files.Charts;
using CanopySim.Files.Quantities;
using CanopySim.Files.Report;
using CanopySim.Files.Scenarios;
using CanopySim.Parameters;

namespace CanopySim.Files.Comparison;

/// <summary>A value that the options used.</summary>
/// <param name="Row">Key, value, how sure it is, source.</param>
/// <param name="Mark">How sure it is.</param>
/// <param name="Differs">True where the options do not all say the same.</param>
internal sealed record AssumedValue(IReadOnlyList<string> Row, Mark Mark, bool Differs);

/// <summary>
/// The values that the options used with how sure each is: one row where all say the same, else a row an option.
/// </summary>
internal static class AssumedValues
{
    public static IEnumerable<AssumedValue> Of(IReadOnlyList<ComparedOption> options, Units units)
    {
        var all = options.SelectMany(option => option.Document.Values.Select(value => (Option: option, Value: value)));
        foreach (var key in all.Where(entry => entry.Value.Key != "name").GroupBy(entry => entry.Value.Key))
        {
            var said = key.Select(entry => (entry.Value.Value, entry.Value.Mark, entry.Value.Source)).Distinct()
                .ToList();
            if (said.Count == 1 && key.Count() == options.Count)
                yield return Value(key.Key, key.First().Value, units, false);
            else foreach (var (option, value) in key) yield return Value($"{key.Key}, {option.Name}", value, units, true);
        }
    }

    private static AssumedValue Value(string name, UnderstoodValue value, Units units, bool differs) =>
        new([name, ReadersUnits.Show(value.Value, units), MarkWords.Of(value.Mark), value.Source], value.Mark, differs);
}
