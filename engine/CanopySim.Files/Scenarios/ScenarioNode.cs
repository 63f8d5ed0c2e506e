namespace CanopySim.Files.Scenarios;

/// <summary>
/// A piece of a scenario's text before it means anything: a map, a list or a value, with the place it stands at.
/// </summary>
internal abstract record ScenarioNode(InputPlace Place)
{
    /// <summary>What it is, in the reader's words.</summary>
    public abstract string Kind { get; }
}

/// <summary>A single value. Nothing after the colon is an empty plain value.</summary>
internal sealed record ValueNode(InputPlace Place, string Text, bool IsQuoted) : ScenarioNode(Place)
{
    public bool IsEmpty => Text.Length == 0 && !IsQuoted;

    public override string Kind => IsEmpty ? "no value" : $"the value {InputError.Quote(Text)}";
}

internal sealed record ListNode(InputPlace Place, IReadOnlyList<ScenarioNode> Items) : ScenarioNode(Place)
{
    public override string Kind => "a list";
}

internal sealed record MapNode(InputPlace Place, IReadOnlyList<MapEntry> Entries) : ScenarioNode(Place)
{
    public override string Kind => "keys with values";

    public MapEntry? Find(string key)
    {
        foreach (var entry in Entries)
            if (entry.Key == key) return entry;
        return null;
    }

    /// <summary>This map with one entry replaced or added.</summary>
    public MapNode With(MapEntry added)
    {
        var entries = Entries.ToList();
        var at = entries.FindIndex(entry => entry.Key == added.Key);
        if (at < 0) entries.Add(added);
        else entries[at] = added;
        return this with { Entries = entries };
    }
}

/// <summary>A key with its value; the place is the key's.</summary>
internal sealed record MapEntry(string Key, InputPlace Place, ScenarioNode Value);
