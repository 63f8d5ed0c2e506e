using System.Text.Json.Nodes;
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

    [Fact]
    public void EveryDefaultFitsItsPattern()
    {
        var fitting = 0;
        Visit(JsonNode.Parse(ScenarioSchema.Json())!);
        Assert.True(fitting > 60, $"{fitting} patterns with a default");

        void Visit(JsonNode node)
        {
            if (node is JsonObject schema)
            {
                if (schema["pattern"] is JsonNode pattern && schema["default"] is JsonNode value)
                {
                    Assert.Matches(pattern.GetValue<string>(), value.GetValue<string>());
                    // The number alone has no unit.
                    Assert.DoesNotMatch(pattern.GetValue<string>(), value.GetValue<string>().Split(' ')[0]);
                    fitting++;
                }

                foreach (var (_, inner) in schema)
                    if (inner is not null) Visit(inner);
            }
            else if (node is JsonArray list)
            {
                foreach (var inner in list)
                    if (inner is not null) Visit(inner);
            }
        }
    }
}
