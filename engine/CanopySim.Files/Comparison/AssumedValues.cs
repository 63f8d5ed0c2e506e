using CanopySim.Files.Report;
using CanopySim.Files.Scenarios;

namespace CanopySim.Files.Comparison;

/// <summary>
/// The values that the options used with how sure each is: one row where all say the same, else a row an option.
/// </summary>
internal static class AssumedValues
{
    public static IEnumerable<IReadOnlyList<string>> Of(IReadOnlyList<ComparedOption> options)
    {
        var all = options.SelectMany(option => option.Document.Values.Select(value => (Option: option, Value: value)));
        foreach (var key in all.Where(entry => entry.Value.Key != "name").GroupBy(entry => entry.Value.Key))
        {
            var said = key.Select(entry => (entry.Value.Value, entry.Value.Mark, entry.Value.Source)).Distinct()
                .ToList();
            if (said.Count == 1 && key.Count() == options.Count) yield return Row(key.Key, key.First().Value);
            else foreach (var (option, value) in key) yield return Row($"{key.Key}, {option.Name}", value);
        }
    }

    private static IReadOnlyList<string> Row(string name, UnderstoodValue value) =>
        [name, value.Value, MarkWords.Of(value.Mark), value.Source];
}
