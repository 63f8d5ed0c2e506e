using CanopySim.Files.Text;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// Lays a scenario over the one that it is based on, and <c>--set</c> over both: maps key by key, anything else whole.
/// </summary>
internal static class ScenarioLayers
{
    public const string BasedOn = "based_on";

    public const string SetOption = "--set";

    private const int LargestFile = 1_000_000;

    private const int LongestChain = 8;

    /// <summary>
    /// The scenario's text with what it is based on underneath; <paramref name="chain"/> collects the files, the
    /// scenario first.
    /// </summary>
    public static MapNode Read(string path, List<string> chain)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return Read(path, new InputPlace(path), key: null, chain, seen);
    }

    /// <summary>The tree with overrides of the form <c>rows.spacing=2.4 m</c> laid over it.</summary>
    public static MapNode Override(MapNode root, IEnumerable<string> overrides)
    {
        foreach (var text in overrides)
        {
            var equals = text.IndexOf('=');
            if (equals <= 0)
                throw new InputError(
                    new InputPlace(SetOption), InputError.Quote(text), "KEY=VALUE, such as rows.spacing=2.4 m");
            var key = text[..equals].Trim();
            if (key == BasedOn)
                throw new InputError(new InputPlace(SetOption), "a value", "based_on in the file alone", BasedOn);
            root = Change(root, new ScenarioChange(key, text[(equals + 1)..].Trim(), new InputPlace(SetOption)));
        }

        return root;
    }

    /// <summary>The tree with one key changed.</summary>
    public static MapNode Change(MapNode root, ScenarioChange change) =>
        (MapNode)Override(
            root, change.Key.Split('.'), 0, ValueOf(change.Text, change.Place), change.Key, change.Place);

    private static MapNode Read(string path, InputPlace place, string? key, List<string> chain, HashSet<string> seen)
    {
        if (chain.Count == LongestChain)
            throw new InputError(
                place, $"a chain of more than {LongestChain} files", "a shorter chain of based_on", key);
        var text = StrictText.Read(path, place, LargestFile, "scenario", key);
        if (!seen.Add(Path.GetFullPath(path)))
            throw new InputError(
                place,
                $"{InputError.Quote(path)}, which is based on this file in turn",
                "a file that stands on its own",
                key);
        chain.Add(path);
        var root = ScenarioText.Parse(text, path) switch
        {
            MapNode map => map,
            null or ValueNode { IsEmpty: true } =>
                throw new InputError(new InputPlace(path, 1), "no keys, only comments or nothing", "a scenario"),
            { } other =>
                throw new InputError(
                    other.Place with { Column = null }, other.Kind, "keys with values, such as name: my block"),
        };
        if (root.Find(BasedOn) is not MapEntry based) return root;
        if (based.Value is not ValueNode { IsEmpty: false } file)
            throw new InputError(based.Place, based.Value.Kind, "the path of another scenario", BasedOn);
        var rest = root with { Entries = [.. root.Entries.Where(entry => entry.Key != BasedOn)] };
        return Merge(Read(Beside(path, file.Text), based.Place, BasedOn, chain, seen), rest);
    }

    /// <summary>A path that a file names, found from that file's folder.</summary>
    public static string Beside(string file, string named) => Path.Combine(Path.GetDirectoryName(file) ?? "", named);

    private static MapNode Merge(MapNode below, MapNode above)
    {
        var entries = below.Entries.ToList();
        // By name: maps may be large, and a search for each key would take the square of their size.
        var indexOf = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < entries.Count; i++) indexOf.Add(entries[i].Key, i);
        foreach (var entry in above.Entries)
        {
            if (!indexOf.TryGetValue(entry.Key, out var at))
            {
                indexOf.Add(entry.Key, entries.Count);
                entries.Add(entry);
                continue;
            }

            entries[at] = (entries[at].Value, entry.Value) switch
            {
                (MapNode under, MapNode over) => entry with { Value = Merge(under, over) },
                // A section whose lines are all commented out changes nothing.
                (MapNode under, ValueNode { IsEmpty: true }) => entry with { Value = under },
                _ => entry,
            };
        }

        return below with { Entries = entries };
    }

    private static ScenarioNode Override(
        ScenarioNode? node, string[] parts, int depth, ScenarioNode value, string key, InputPlace place)
    {
        if (depth == parts.Length) return value;
        if (depth >= ScenarioText.DeepestNesting)
            throw new InputError(place, $"{InputError.Quote(key)}, nested too deep", "a key of the scenario");
        if (node is ListNode list)
        {
            if (!int.TryParse(parts[depth], out var index) || index < 0 || index >= list.Items.Count)
                throw new InputError(
                    place,
                    $"{InputError.Quote(parts[depth])} for a list",
                    $"a number from 0 to {list.Items.Count - 1}",
                    key);
            var items = list.Items.ToList();
            items[index] = Override(items[index], parts, depth + 1, value, key, place);
            return list with { Items = items };
        }

        var map = node as MapNode ?? new MapNode(place, []);
        var below = map.Find(parts[depth]);
        var inner = Override(below?.Value, parts, depth + 1, value, key, place);
        // A section keeps its place in the file; what the option puts in place of something else is the option's.
        var kept = depth < parts.Length - 1 && below?.Value is MapNode or ListNode;
        return map.With(new MapEntry(parts[depth], kept ? below!.Place : place, inner));
    }

    // Only what opens with a bracket is read as YAML: a name may hold a colon or a hash.
    private static ScenarioNode ValueOf(string text, InputPlace place) => text is ['[' or '{', ..]
        ? ScenarioText.Parse(text, place.File, withLines: false)!
        : new ValueNode(place, text, IsQuoted: false);
}
