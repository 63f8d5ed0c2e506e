using CanopySim.Carbon;
using CanopySim.Plants;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class ToppingWorkTests
{
    private static readonly DateOnly Day = WorkCase.Day;

    [Fact]
    public void Nodes_above_the_count_go_and_the_tip_stops()
    {
        var work = Case(new Topping { On = Day, Nodes = 12 });
        work.Do();
        Assert.All(work.Shoots, shoot => Assert.Equal(12, shoot.Phytomers.Count));
        Assert.All(work.Shoots, shoot => Assert.True(shoot.TipStopped));
        work.Grown.Grow(10);
        Assert.All(work.Shoots, shoot => Assert.Equal(12, shoot.Phytomers.Count));
    }

    [Fact]
    public void Nothing_of_a_hedge_stands_above_the_cut()
    {
        var work = Case(new Topping { On = Day, Height = 1.6 });
        var path = new ShootPath(work.Scenario);
        var before = work.Shoots.Sum(shoot => shoot.Phytomers.Count);
        Assert.Contains(work.Shoots, shoot => path.Nodes(shoot).Max(point => point.Z) > 1.6);
        work.Do();
        Assert.True(work.Shoots.Sum(shoot => shoot.Phytomers.Count) < before);
        // A shoot that is short and bent may move by a little when its weight goes.
        Assert.All(work.Shoots, shoot => Assert.True(path.Nodes(shoot).Max(point => point.Z) <= 1.6 + 1e-4));
    }

    [Fact]
    public void Where_shoots_hang_what_is_low_goes()
    {
        var work = new WorkCase(
            new CanopyWork { Topping = [new Topping { On = Day, Height = 1.1 }] },
            GrownCanopy.Scenario(TrellisForm.HangingCurtain), days: 60);
        var path = new ShootPath(work.Scenario);
        Assert.Contains(work.Shoots, shoot => path.Nodes(shoot).Min(point => point.Z) < 0.9);
        work.Do();
        Assert.All(work.Shoots, shoot => Assert.True(path.Nodes(shoot).Min(point => point.Z) >= 1.1 - 1e-4));
    }

    /// <summary>The ground rises along the row: the cut follows it.</summary>
    [Fact]
    public void Height_is_over_the_ground_at_the_place()
    {
        var work = new WorkCase(
            new CanopyWork { Topping = [new Topping { On = Day, Height = 1.6 }] },
            GrownCanopy.Scenario(slope: 30, aspect: 180), days: 60);
        var places = new CanopySim.Geometry.CanopyPlaces(work.Scenario);
        Assert.Equal(0.577, places.Cell.RiseAlong, 3);
        work.Do();
        var tops = work.Shoots.Select(shoot => places.Nodes(shoot).Max(places.HeightOverGround)).ToList();
        Assert.All(tops, top => Assert.InRange(top, 1.3, 1.6 + 1e-4));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_cut_is_what_the_vine_lost(bool withFruit)
    {
        var work = Case(new Topping { On = Day, Nodes = withFruit ? 3 : 10 });
        if (withFruit) work.Grown.Set();
        var vine = work.Canopy.Vines[0];
        var before = CarbonStock.Of(vine, work.Scenario.Carbon);
        var lost = work.Do().Lost[0];
        Assert.True(lost.Leaf > 0 && lost.Stem > 0);
        Assert.Equal(withFruit, lost.FruitStructure > 0);
        Assert.Equal(before - CarbonStock.Of(vine, work.Scenario.Carbon), CarbonLedger.CarbonOf(lost), 1e-9 * before);
        Assert.Equal(vine.Clusters().Sum(cluster => cluster.Berries ?? 0), vine.Crop.Berries, 1e-6);
    }

    // Tip removal pushes the laterals next to the cut: Vasconcelos & Castagnoli 2001; 1 to 3 of them, general, from
    // memory.
    [Fact]
    public void Laterals_under_the_cut_push()
    {
        var topped = Case(new Topping { On = Day, Nodes = 12 });
        var whole = new WorkCase(new CanopyWork());
        topped.Do();
        // Few days: then those under the cut are not yet full with eight leaves.
        topped.Grown.Grow(4);
        whole.Grown.Grow(4);
        Assert.True(LateralLeaves(topped.Canopy, 9, 12) > 1.5 * LateralLeaves(whole.Canopy, 9, 12));
        Assert.Equal(LateralLeaves(whole.Canopy, 1, 8), LateralLeaves(topped.Canopy, 1, 8));

        static int LateralLeaves(Canopy canopy, int from, int to) => canopy.PrimaryShoots()
            .SelectMany(shoot => shoot.Phytomers.Where(node => node.Rank >= from && node.Rank <= to))
            .Sum(node => node.Lateral?.Phytomers.Count ?? 0);
    }

    /// <summary>The second pass of the year finds no tips, but laterals that have outgrown the height.</summary>
    [Fact]
    public void A_second_topping_cuts_the_laterals_that_the_first_let_go()
    {
        var work = Case(new Topping { On = Day, Height = 1.5 }, new Topping { On = Day.AddDays(30), Height = 1.5 });
        work.Do();
        work.Grown.Grow(30);
        var nodes = work.Canopy.Vines[0].AllShoots().Where(shoot => shoot.Order == 2)
            .Sum(shoot => shoot.Phytomers.Count);
        Assert.True(work.Do(Day.AddDays(30)).CanopyChanged);
        Assert.True(
            work.Canopy.Vines[0].AllShoots().Where(shoot => shoot.Order == 2)
            .Sum(shoot => shoot.Phytomers.Count) < nodes);
        Assert.Equal(2, work.Worker.Done.Count);
    }

    [Fact]
    public void Higher_than_any_shoot_it_says_so()
    {
        var work = Case(new Topping { On = Day, Height = 3 }, new Topping { On = Day, Nodes = 50 });
        Assert.False(work.Do().CanopyChanged);
        Assert.Empty(work.Worker.Done);
        Assert.Contains(
            "canopy_work.topping.0 on 2025-06-01: no shoot reached beyond 3 m over the ground, so nothing was cut.",
            work.Worker.Warnings);
        Assert.Contains("canopy_work.topping.1 on 2025-06-01: no shoot had more than 50 nodes, so nothing was cut.",
            work.Worker.Warnings);
    }

    private static WorkCase Case(params Topping[] toppings) => new(new CanopyWork { Topping = toppings });
}
