using System.Text.Json.Nodes;
using CanopySim.Files.Scenarios;

namespace CanopySim.Files.Batch;

/// <summary>The JSON Schema of plans (draft 2020-12), made from the types, so that editors complete and check them.</summary>
public static class PlanSchema
{
    public static string Json()
    {
        var section = ScenarioSchema.Section(SectionShape.Of(typeof(PlanText)));
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "CanopySim plan",
            ["description"] = "Many seasons: scenarios, weather and varied keys, crossed to a numbered list.",
        };
        foreach (var (name, value) in section.ToList())
        {
            section.Remove(name);
            schema[name] = value;
        }

        schema["type"] = "object";
        schema["required"] = new JsonArray(
            [.. SectionShape.Of(typeof(PlanText)).Keys.Where(key => key.IsRequired).Select(key => (JsonNode)key.Name)]);
        return schema.ToJsonString(ScenarioSchema.Written) + "\n";
    }
}
