namespace CanopySim;

/// <summary>A scenario and its weather do not fit together. The message says what was found and what is expected.</summary>
public sealed class SeasonInputException(string key, string message) : Exception(message)
{
    /// <summary>The scenario key that has to change.</summary>
    public string Key { get; } = key;
}
