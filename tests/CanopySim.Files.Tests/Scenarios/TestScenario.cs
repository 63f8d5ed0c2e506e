using CanopySim.Files.Scenarios;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

/// <summary>Writes scenarios into a folder of their own, with a weather file beside them.</summary>
internal sealed class TestScenario : IDisposable
{
    /// <summary>The least that a scenario says; seven lines.</summary>
    public const string Least = """
        name: small block
        site:
          latitude: 47.6 deg
          longitude: -122.3 deg
          time_zone: UTC-08:00
        weather:
          file: weather.csv

        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("canopysim-").FullName;

    public TestScenario() => Write("weather.csv", "date,tmin,tmax\n2014-04-01,5,15\n");

    public string At(string name) => Path.Combine(_folder, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }

    public ScenarioDocument Read(string text, params string[] overrides) => ScenarioFile.Read(Write("block.yaml", text), overrides);

    /// <summary>The message of the error that reading gives, with the folder taken off its front.</summary>
    public string Message(string text, params string[] overrides) => Error(text, overrides).Message.Replace(_folder + Path.DirectorySeparatorChar, "");

    public InputError Error(string text, params string[] overrides) => Assert.Throws<InputError>(() => Read(text, overrides));

    public string Short(InputError error) => error.Message.Replace(_folder + Path.DirectorySeparatorChar, "");

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
