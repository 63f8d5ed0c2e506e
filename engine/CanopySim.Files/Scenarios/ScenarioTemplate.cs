using CanopySim.Training;

namespace CanopySim.Files.Scenarios;

/// <summary>A key of a scenario that is given another value, and the place that says so.</summary>
/// <param name="Key">Dotted key, as <c>rows.spacing</c>.</param>
/// <param name="Text">The value as a scenario writes it, as <c>2.4 m</c>.</param>
/// <param name="Place">Where it stands, for messages.</param>
public readonly record struct ScenarioChange(string Key, string Text, InputPlace Place);

/// <summary>
/// A scenario's text, read once with what it is based on, from which scenarios with other values are made: thousands of
/// seasons need no file but the first one did.
/// </summary>
public sealed class ScenarioTemplate
{
    private const string WeatherKey = "weather.file";

    private readonly string _path;
    private readonly MapNode _root;
    private readonly List<string> _chain;

    private ScenarioTemplate(string path, MapNode root, List<string> chain) =>
        (_path, _root, _chain) = (path, root, chain);

    /// <summary>Reads the text; what its values are is checked by <see cref="Document"/>.</summary>
    /// <exception cref="InputError">It is no scenario.</exception>
    public static ScenarioTemplate Read(string path, IReadOnlyList<string>? overrides = null)
    {
        var chain = new List<string>();
        var root = ScenarioLayers.Override(ScenarioLayers.Read(path, chain), overrides ?? []);
        return new ScenarioTemplate(path, root, chain);
    }

    /// <summary>A template with some values changed for all that is made from it.</summary>
    public ScenarioTemplate With(IEnumerable<ScenarioChange> changes) =>
        new(_path, changes.Aggregate(_root, ScenarioLayers.Change), _chain);

    /// <summary>The scenario with changes, checked as if its file said so.</summary>
    /// <exception cref="InputError">A value is wrong; the first one is told.</exception>
    public ScenarioDocument Document(params IReadOnlyList<ScenarioChange> changes)
    {
        var binder = new ScenarioBinder(_path);
        var scenario = binder.Bind(changes.Aggregate(_root, ScenarioLayers.Change));
        var unused = TrellisChecks.KeysWithoutUse(scenario.Trellis, binder.PlaceOf, DepthOf);
        if (unused.Count > 0) scenario = scenario with { Trellis = TrellisKeys.Used(scenario.Trellis) };
        ScenarioChecks.Check(scenario, binder.PlaceOf);
        return new ScenarioDocument
        {
            Scenario = scenario,
            Path = _path,
            BasedOn = _chain[1..],
            WeatherPath = WeatherPath(scenario.Weather.File, binder.PlaceOf(WeatherKey)),
            Values = binder.Values,
            KeysWithoutUse = unused,
        };

        // What a file of the scenario did not say has depth 0: the command line, or a plan.
        int? DepthOf(string key) => binder.IsGiven(key) ? _chain.IndexOf(binder.PlaceOf(key).File) + 1 : null;
    }

    // Beside the file that names it; from the command line, from where the program runs.
    private static string WeatherPath(string named, InputPlace place)
    {
        var path = place.File == ScenarioLayers.SetOption ? named : ScenarioLayers.Beside(place.File, named);
        if (Directory.Exists(path))
            throw new InputError(place, $"{InputError.Quote(path)} is a folder", "a weather file", WeatherKey);
        if (!File.Exists(path))
            throw new InputError(place, $"no file {InputError.Quote(path)}", "a weather file", WeatherKey);
        return path;
    }
}
