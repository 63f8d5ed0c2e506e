using CanopySim.Parameters;

namespace CanopySim.Files.Scenarios;

/// <summary>
/// What was understood for one key of a scenario, and how sure it is: a line of <c>canopysim check</c>.
/// </summary>
/// <param name="Key">Dotted key: <c>rows.vine_spacing</c>, <c>canopy_work.topping.0.height</c>.</param>
/// <param name="Value">The value in the engine's unit.</param>
/// <param name="Mark">Given where the file or <c>--set</c> gives it, else how sure the default is.</param>
/// <param name="Source">Where the default comes from; empty for a given value.</param>
/// <param name="Where">File and line, <c>--set</c>, or <c>default</c>.</param>
/// <param name="Help">What the key means.</param>
public sealed record UnderstoodValue(
    string Key, string Value, Mark Mark, string Source, string Where = "", string Help = "");

/// <summary>A scenario as it was read, with where everything in it came from.</summary>
public sealed record ScenarioDocument
{
    public required Scenario Scenario { get; init; }

    /// <summary>The scenario file, as its path was given.</summary>
    public required string Path { get; init; }

    /// <summary>The files that it is based on, nearest first.</summary>
    public required IReadOnlyList<string> BasedOn { get; init; }

    /// <summary>The weather file, found from the file that names it.</summary>
    public required string WeatherPath { get; init; }

    public required IReadOnlyList<UnderstoodValue> Values { get; init; }

    /// <summary>
    /// Keys of the trellis that a file under the scenario gives to another form: this one has no use for them.
    /// </summary>
    public IReadOnlyList<string> KeysWithoutUse { get; init; } = [];

    /// <summary>Everything that was read for it: the scenario, what it is based on, the weather.</summary>
    public IReadOnlyList<string> SourceFiles => [Path, .. BasedOn, WeatherPath];
}
