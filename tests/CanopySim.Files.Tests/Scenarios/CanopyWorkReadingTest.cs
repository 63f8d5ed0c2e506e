using CanopySim.Training;
using CanopySim.Water;
using Xunit;

namespace CanopySim.Files.Tests.Scenarios;

public sealed class CanopyWorkReadingTest : IDisposable
{
    private readonly TestScenario _files = new();

    public void Dispose() => _files.Dispose();

    [Fact]
    public void Every_action_with_all_its_keys()
    {
        var scenario = _files.Read(TestScenario.Least + """
            canopy_work:
              shoots_led: when_tucked
              shoot_thinning: [{stage: budbreak, days_after: 20, shoots_per_vine: 10, first: crowded}]
              tucking: [{when_shoots_reach: 2 ft}, {stage: bloom}]
              topping: [{stage: bloom, days_after: 30, height: 2 m}]
              side_hedging: [{stage: bloom, days_after: 30, width: 20 in}]
              leaf_removal: [{stage: bloom, from: -10 cm, to: 50 cm, side: afternoon, share: 60 %, laterals: false}]
              lateral_removal: [{stage: veraison, share: 0.5}]
              cluster_thinning: [{stage: veraison, share: 25 %}]
              sprays: [{on: 2014-07-01, label: cover 2, to: 1 m}]
            soil:
              irrigation: [{on: 2014-03-01, amount: 1 in}]
            """).Scenario;
        var work = scenario.CanopyWork;
        Assert.Equal(ShootLeading.WhenTucked, work.ShootsLed);
        Assert.Equal([new ShootThinning { Stage = WorkStage.Budbreak, DaysAfter = 20, ShootsPerVine = 10, First = ThinningOrder.Crowded }], work.ShootThinning);
        Assert.Equal([new Tucking { WhenShootsReach = 2 * 0.3048 }, new Tucking { Stage = WorkStage.Bloom }], work.Tucking);
        Assert.Equal([new Topping { Stage = WorkStage.Bloom, DaysAfter = 30, Height = 2 }], work.Topping);
        Assert.Equal(20 * 0.0254, work.SideHedging.Single().Width, 1e-12);
        Assert.Equal(
            [new LeafRemoval { Stage = WorkStage.Bloom, From = -0.1, To = 0.5, Side = CanopySide.Afternoon, Share = 0.6, Laterals = false }],
            work.LeafRemoval);
        Assert.Equal([new LateralRemoval { Stage = WorkStage.Veraison, Share = 0.5 }], work.LateralRemoval);
        Assert.Equal([new ClusterThinning { Stage = WorkStage.Veraison, Share = 0.25 }], work.ClusterThinning);
        Assert.Equal([new Spray { On = new DateOnly(2014, 7, 1), Label = "cover 2", To = 1 }], work.Sprays);
        Assert.Equal([new Irrigation { On = new DateOnly(2014, 3, 1), Amount = 25.4 }], scenario.Soil.Irrigation);
    }

    /// <summary>The README's plan is one that the program takes.</summary>
    [Fact]
    public void The_plan_in_the_readme_reads()
    {
        var folder = ShippedScenariosTest.Folder;
        var readme = File.ReadAllText(Path.Combine(folder, "..", "README.md"));
        var lines = readme[readme.IndexOf("### Work in the canopy", StringComparison.Ordinal)..].Split('\n')
            .SkipWhile(line => !line.StartsWith("    ", StringComparison.Ordinal))
            .TakeWhile(line => line.StartsWith("    ", StringComparison.Ordinal))
            .Select(line => line[4..]);
        var scenario = _files.Read(TestScenario.Least + string.Join('\n', lines) + "\n").Scenario;
        Assert.Equal((1, 1, 1, 1, 1), (scenario.CanopyWork.ShootThinning.Count, scenario.CanopyWork.Topping.Count,
            scenario.CanopyWork.LeafRemoval.Count, scenario.CanopyWork.Sprays.Count, scenario.Soil.Irrigation.Count));
    }
}
