using CanopySim.Files.Scenarios;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

public sealed class ScenarioSchemaTest
{
    [Fact]
    public void CommittedSchemaIsTheOneOfTheTypes()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "CanopySim.sln"))) folder = Path.GetDirectoryName(folder) ?? throw new FileNotFoundException("CanopySim.sln");
        var path = Path.Combine(folder, "scenarios", "scenario.schema.json");
        var schema = ScenarioSchema.Json();
        // The output of the test is the file to commit after a change of the types.
        if (!File.Exists(path) || File.ReadAllText(path) != schema) File.WriteAllText(Path.Combine(AppContext.BaseDirectory, "scenario.schema.json"), schema);
        Assert.Equal(schema, File.ReadAllText(path));
    }
}
