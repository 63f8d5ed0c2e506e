using CanopySim.Files.Batch;
using CanopySim.Files.Tests.Scenarios;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

public sealed class PlanSchemaTest
{
    [Fact]
    public void CommittedSchemaIsTheOneOfTheTypes()
    {
        var path = Path.Combine(ShippedScenariosTest.Folder, "plan.schema.json");
        var schema = PlanSchema.Json();
        // The output of the test is the file to commit after a change of the types.
        if (!File.Exists(path) || File.ReadAllText(path) != schema) File.WriteAllText(Path.Combine(AppContext.BaseDirectory, "plan.schema.json"), schema);
        Assert.Equal(schema, File.ReadAllText(path));
    }

    [Fact]
    public void ShippedPlansRead()
    {
        var plans = Directory.GetFiles(ShippedScenariosTest.Folder, "plan*.yaml", SearchOption.AllDirectories);
        Assert.NotEmpty(plans);
        foreach (var path in plans)
        {
            var plan = PlanFile.Read(path);
            var items = new PlanItems(plan);
            new BatchWeather(plan, 2).CheckAll(items);
            Assert.True(items.Count > 1, path);
        }
    }
}
