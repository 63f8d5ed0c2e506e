namespace CanopySim.Files.Scenarios;

/// <summary>Reads scenario files: text → nodes with their lines → the model's records, each step strict.</summary>
public static class ScenarioFile
{
    /// <summary>
    /// Reads a scenario with what it is based on and with overrides of the form <c>rows.spacing=2.4 m</c>.
    /// </summary>
    /// <exception cref="InputError">Anything in it is wrong; the first thing is told.</exception>
    public static ScenarioDocument Read(string path, IReadOnlyList<string>? overrides = null) =>
        ScenarioTemplate.Read(path, overrides).Document();

    /// <summary>Whether the values of a scenario that was not read from a file fit each other.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="name">What messages call it.</param>
    /// <exception cref="InputError">Two of them do not; the first is told.</exception>
    public static void Check(Scenario scenario, string name) => ScenarioChecks.Check(scenario, _ => new InputPlace(name));

    /// <summary>A commented scenario to start from: every section, what a grower gives written out, the rest commented out.</summary>
    public static string Starter() => ScenarioStarter.Write();
}
