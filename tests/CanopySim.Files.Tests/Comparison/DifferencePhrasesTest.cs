using CanopySim.Files.Charts;
using CanopySim.Files.Comparison;
using CanopySim.Files.Scenarios;
using CanopySim.Files.Tests.Charts;
using CanopySim.Growth;
using CanopySim.Training;
using CanopySim.Water;
using Xunit;

namespace CanopySim.Files.Tests.Comparison;

public class DifferencePhrasesTest
{
    public static TheoryData<WorkStep, string> Steps => new()
    {
        { new Topping { Nodes = 12, Stage = WorkStage.Bloom }, "shoots topped at 12 nodes at bloom" },
        {
            new LeafRemoval { Stage = WorkStage.Bloom, DaysAfter = 25, Side = CanopySide.Morning, Share = 0.6 },
            "60 % of the leaves pulled in the fruit zone on the morning side 25 days after bloom"
        },
        {
            new LeafRemoval { On = new DateOnly(2025, 6, 20), From = 0.1, To = 0.4 },
            "all leaves pulled from 0.1 m to 0.4 m over the cordon on 20 June 2025"
        },
        {
            new ShootThinning { WhenShootsReach = 0.2, ShootsPerMeter = 12, First = ThinningOrder.Crowded },
            "shoots thinned to 12 a meter, the most crowded first, when shoots reach 0.2 m"
        },
        { new SideHedging { Width = 0.5, Stage = WorkStage.Veraison }, "sides hedged to a width of 0.5 m at veraison" },
        {
            new ClusterThinning { Share = 0.3, Stage = WorkStage.Veraison, DaysAfter = 1 },
            "30 % of the clusters taken off 1 day after veraison"
        },
        { new Irrigation { Amount = 20, On = new DateOnly(2025, 7, 20) }, "20 mm of water given on 20 July 2025" },
    };

    [Theory]
    [MemberData(nameof(Steps))]
    public void AStepIsSaidAsAGrowerSaysIt(WorkStep step, string words) =>
        Assert.Equal(words, WorkPhrases.Of(step, Units.Metric));

    [Fact]
    public void EveryListOfWorkHasWords() =>
        Assert.Equal(
            typeof(WorkStep).Assembly.GetTypes().Count(type => type.IsSubclassOf(typeof(WorkStep)) && !type.IsAbstract),
            WorkPhrases.Lists.Count);

    [Fact]
    public void EveryPhraseIsOfAKeyThatThereIs()
    {
        var schema = ScenarioSchema.Json();
        foreach (var part in DifferencePhrases.Keys.SelectMany(key => key.Split('.')).Distinct())
            Assert.True(schema.Contains($"\"{part}\": {{", StringComparison.Ordinal), part);
    }

    [Theory]
    [InlineData("rows.spacing", "2 m", "2.4 m", "rows 2 m apart instead of 2.4 m")]
    [InlineData("trellis.cordon_height", "1.7 m", null, "cordon 1.7 m over the ground")]
    [InlineData("trellis.cordon_height", null, "1.7 m", "not said: cordon 1.7 m over the ground")]
    [InlineData("growth.phyllochron", "24 °C d", "22 °C d", "phyllochron (growth) 24 °C d instead of 22 °C d")]
    public void AValueIsSaidBesideTheOther(string key, string? value, string? before, string words) =>
        Assert.Equal(words, DifferencePhrases.Of(key, value, before));

    [Fact]
    public void ACurveOfAgesIsSaidByWhatItMeans()
    {
        Assert.Equal("best at 30 to 40 days, at half at 114 days", DifferencePhrases.Curve(new LeafAgeCurve()));
        Assert.Equal("best at 0 to 500 days, never at half up to 500 days",
            DifferencePhrases.Curve(new LeafAgeCurve { Points = [new(0, 1), new(500, 1)] }));
    }

    [Theory]
    [InlineData(Units.Metric, "30 a meter")]
    [InlineData(Units.Us, "9.14 a foot")]
    public void ShootsAreCountedByTheReadersLength(Units units, string words) =>
        Assert.Equal(words, DifferencePhrases.Value("canopy_work.shoots_per_meter", "30 1/m", InventedSeason.Scenario(), units));
}
