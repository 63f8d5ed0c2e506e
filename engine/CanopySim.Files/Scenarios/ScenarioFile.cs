using CanopySim.Training;

namespace CanopySim.Files.Scenarios;

/// <summary>Reads scenario files: text → nodes with their lines → the model's records, each step strict.</summary>
public static class ScenarioFile
{
    /// <summary>
    /// Reads a scenario with what it is based on and with overrides of the form <c>rows.spacing=2.4 m</c>.
    /// </summary>
    /// <exception cref="InputError">Anything in it is wrong; the first thing is told.</exception>
    public static ScenarioDocument Read(string path, IReadOnlyList<string>? overrides = null)
    {
        var chain = new List<string>();
        var root = ScenarioLayers.Override(ScenarioLayers.Read(path, chain), overrides ?? []);
        var binder = new ScenarioBinder(path);
        var scenario = binder.Bind(root);
        var unused = TrellisChecks.KeysWithoutUse(scenario.Trellis, binder.PlaceOf, DepthOf);
        if (unused.Count > 0) scenario = scenario with { Trellis = TrellisKeys.Used(scenario.Trellis) };
        ScenarioChecks.Check(scenario, binder.PlaceOf);
        return new ScenarioDocument
        {
            Scenario = scenario,
            Path = path,
            BasedOn = chain[1..],
            WeatherPath = WeatherPath(scenario.Weather.File, binder.PlaceOf(WeatherKey)),
            Values = binder.Values,
            KeysWithoutUse = unused,
        };

        int? DepthOf(string key) =>
            !binder.IsGiven(key) ? null
            : binder.PlaceOf(key).File == ScenarioLayers.SetOption ? 0
            : chain.IndexOf(binder.PlaceOf(key).File) + 1;
    }

    /// <summary>Whether the values of a scenario that was not read from a file fit each other.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="name">What messages call it.</param>
    /// <exception cref="InputError">Two of them do not; the first is told.</exception>
    public static void Check(Scenario scenario, string name) => ScenarioChecks.Check(scenario, _ => new InputPlace(name));

    /// <summary>A commented scenario to start from: every section, what a grower gives written out, the rest commented out.</summary>
    public static string Starter() => ScenarioStarter.Write();

    private const string WeatherKey = "weather.file";

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
