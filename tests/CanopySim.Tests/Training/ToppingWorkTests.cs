using CanopySim.Carbon;
using CanopySim.Plants;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class ToppingWorkTests
{
    private static readonly DateOnly Day = new(2025, 6, 1);

    [Fact]
    public void Nodes_above_the_count_go_and_the_tip_stops()
    {
        var (scenario, grown) = Case(new Topping { On = Day, Nodes = 12 });
        new ToppingWork(scenario).Apply(grown.Canopy, Day);
        Assert.All(grown.Canopy.PrimaryShoots(), shoot => Assert.Equal(12, shoot.Phytomers.Count));
        Assert.All(grown.Canopy.PrimaryShoots(), shoot => Assert.True(shoot.TipStopped));
        grown.Grow(10);
        Assert.All(grown.Canopy.PrimaryShoots(), shoot => Assert.Equal(12, shoot.Phytomers.Count));
    }

    [Fact]
    public void Nothing_of_a_hedge_stands_above_the_cut()
    {
        var (scenario, grown) = Case(new Topping { On = Day, Height = 1.6 });
        var path = new ShootPath(scenario);
        var before = grown.Canopy.PrimaryShoots().Sum(shoot => shoot.Phytomers.Count);
        Assert.Contains(grown.Canopy.PrimaryShoots(), shoot => path.Nodes(shoot).Max(point => point.Z) > 1.6);
        new ToppingWork(scenario).Apply(grown.Canopy, Day);
        Assert.True(grown.Canopy.PrimaryShoots().Sum(shoot => shoot.Phytomers.Count) < before);
        // A shoot that is short and bent may move by a little when its weight goes.
        Assert.All(grown.Canopy.PrimaryShoots(), shoot => Assert.True(path.Nodes(shoot).Max(point => point.Z) <= 1.6 + 1e-4));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_cut_is_what_the_vine_lost(bool withFruit)
    {
        var (scenario, grown) = Case(new Topping { On = Day, Nodes = withFruit ? 3 : 10 });
        if (withFruit) grown.Set();
        var vine = grown.Canopy.Vines[0];
        var before = CarbonStock.Of(vine, scenario.Carbon);
        var lost = new ToppingWork(scenario).Apply(grown.Canopy, Day)[0];
        Assert.True(lost.Leaf > 0 && lost.Stem > 0);
        Assert.Equal(withFruit, lost.FruitStructure > 0);
        Assert.Equal(before - CarbonStock.Of(vine, scenario.Carbon), CarbonLedger.CarbonOf(lost), 1e-9 * before);
        Assert.Equal(vine.Clusters().Sum(cluster => cluster.Berries ?? 0), vine.Crop.Berries, 1e-6);
    }

    // Tip removal pushes the laterals next to the cut: Vasconcelos & Castagnoli 2001; 1 to 3 of them, general, from memory.
    [Fact]
    public void Laterals_under_the_cut_push()
    {
        var (scenario, topped) = Case(new Topping { On = Day, Nodes = 12 });
        var (_, whole) = Case(null);
        new ToppingWork(scenario).Apply(topped.Canopy, Day);
        // Few days: then those under the cut are not yet full with eight leaves.
        topped.Grow(4);
        whole.Grow(4);
        Assert.True(LateralLeaves(topped.Canopy, 9, 12) > 1.5 * LateralLeaves(whole.Canopy, 9, 12));
        Assert.Equal(LateralLeaves(whole.Canopy, 1, 8), LateralLeaves(topped.Canopy, 1, 8));

        static int LateralLeaves(Canopy canopy, int from, int to) => canopy.PrimaryShoots()
            .SelectMany(shoot => shoot.Phytomers.Where(node => node.Rank >= from && node.Rank <= to))
            .Sum(node => node.Lateral?.Phytomers.Count ?? 0);
    }

    [Fact]
    public void Is_done_when_due_and_once()
    {
        var (scenario, grown) = Case(new Topping { WhenShootsReach = 0.5, Nodes = 8 });
        var work = new ToppingWork(scenario);
        Assert.NotEqual(default, work.Apply(grown.Canopy, Day)[0]);
        Assert.Equal(default, work.Apply(grown.Canopy, Day.AddDays(1))[0]);

        var (dated, other) = Case(new Topping { On = Day, Nodes = 8 });
        Assert.Equal(default, new ToppingWork(dated).Apply(other.Canopy, Day.AddDays(-1))[0]);
    }

    private static (Scenario Scenario, GrownCanopy Grown) Case(Topping? topping)
    {
        var scenario = GrownCanopy.Scenario();
        if (topping is not null) scenario = scenario with { CanopyWork = new CanopyWork { Topping = [topping] } };
        return (scenario, new GrownCanopy(scenario).Grow(36));
    }
}
