using System.Text.Json;
using CanopySim.Files.Scenarios;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

/// <summary>A scenario that was written is the same when it is read again.</summary>
public sealed class ScenarioWriterTest
{
    public static TheoryData<string> Shipped
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName,
                "CanopySim.sln"))) folder = folder.Parent;
            return [.. Directory.EnumerateFiles(Path.Combine(folder!.FullName, "scenarios"), "scenario.yaml",
                SearchOption.AllDirectories).Order()];
        }
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void AShippedScenarioIsReadBackAsItWas(string path) => CheckRoundTrip(ScenarioFile.Read(path).Scenario);

    [Fact]
    public void WorkNamesAndColumnsAreReadBackToo()
    {
        var scenario = ScenarioFile.Read(Shipped.Select(row => row.Data).Single(path => path.Contains("first-season")))
            .Scenario;
        CheckRoundTrip(scenario with
        {
            Name = "A \"north\" block: #3, Gewürztraminer",
            Weather = scenario.Weather with
            {
                File = "weather.csv",
                Columns = new Dictionary<string,
                string>
                { ["rain"] = "Rain: total [mm]" },
                Seed = 7
            },
            CanopyWork = scenario.CanopyWork with
            {
                Topping = [new Topping { On = new DateOnly(2025, 7, 1), Height = 2.1 },
                    new Topping { Stage = WorkStage.Veraison, DaysAfter = 5, Nodes = 18 }],
                LeafRemoval = [new LeafRemoval { Stage = WorkStage.Bloom, DaysAfter = 14, Share = 0.35,
                    Side = CanopySide.Morning, Laterals = false, From = -0.05, To = 0.4 }],
                Sprays = [new Spray { Stage = WorkStage.Bloom, Label = "first: cover" }],
            },
            Trellis = new Trellis
            {
                Form = TrellisForm.OpenU,
                WallTilt = 10.5,
                CatchWires = [new CatchWirePair(1.2, 0.3), new CatchWirePair(1.5, 0.35)]
            },
        });
    }

    private static void CheckRoundTrip(Scenario scenario)
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            // Deep enough for a weather file that is named from a folder beside.
            var file = Path.Combine(folder.CreateSubdirectory("a").CreateSubdirectory("b").FullName, "written.yaml");
            var weather = Path.Combine(Path.GetDirectoryName(file)!, scenario.Weather.File);
            Directory.CreateDirectory(Path.GetDirectoryName(weather)!);
            File.WriteAllText(weather, "date\n");
            File.WriteAllText(file, ScenarioWriter.Text(scenario, ["A remark."]));
            Assert.Equal(JsonSerializer.Serialize(scenario),
                JsonSerializer.Serialize(ScenarioFile.Read(file).Scenario));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
