using CanopySim.Tests.Plants;
using CanopySim.Training;
using CanopySim.Water;
using Xunit;

namespace CanopySim.Tests.Training;

public class CanopyWorkerTests
{
    private static readonly DateOnly Day = WorkCase.Day;

    [Fact]
    public void A_day_a_length_and_a_stage_each_come_once()
    {
        var work = new WorkCase(new CanopyWork
        {
            Topping =
            [
                new Topping { On = Day.AddDays(1), Nodes = 12 },
                new Topping { WhenShootsReach = 0.5, Nodes = 14 },
                new Topping { Stage = WorkStage.Bloom, DaysAfter = 5, Nodes = 10 },
            ],
        });
        var bloom = new StagesReached(Day.AddDays(-50), Day, null, null);
        var days = Enumerable.Range(0, 20).Select(i => Day.AddDays(i)).Where(day => work.Do(day, bloom).CanopyChanged)
            .ToList();
        Assert.Equal([Day, Day.AddDays(1), Day.AddDays(5)], days);
        Assert.Equal(["shoots topped at 14 nodes", "shoots topped at 12 nodes", "shoots topped at 10 nodes"],
            work.Worker.Done.Select(done => done.What));
        work.Worker.Close(bloom, Day.AddDays(-100), Day.AddDays(20), isCutShort: false);
        Assert.Empty(work.Worker.Warnings);
    }

    [Fact]
    public void Work_that_falls_due_without_shoots_says_so()
    {
        var work = new WorkCase(new CanopyWork { Topping = [new Topping { Stage = WorkStage.Budbreak, Nodes = 12 }] });
        var bare = VinePlanting.Plant(work.Scenario);
        work.Worker.Apply(bare, new StagesReached(Day, null, null, null), Day);
        Assert.Equal(["canopy_work.topping.0 on 2025-06-01: no shoot stood, so nothing was done."],
            work.Worker.Warnings);
    }

    [Fact]
    public void Work_that_is_never_due_says_why()
    {
        var work = new WorkCase(new CanopyWork
        {
            Topping =
            [
                new Topping { On = new DateOnly(2026, 1, 1), Nodes = 12 },
                new Topping { WhenShootsReach = 5, Nodes = 12 },
                new Topping { Stage = WorkStage.Veraison, Nodes = 12 },
                new Topping { Stage = WorkStage.Bloom, DaysAfter = 90, Nodes = 12 },
                new Topping { Stage = WorkStage.Ripe, Nodes = 12 },
            ],
        });
        var stages = new StagesReached(Day.AddDays(-50), Day, null, null);
        work.Do(Day, stages);
        var longest = FormattableString.Invariant($"{work.Shoots.Average(shoot => shoot.Length):0.##}");
        work.Worker.Close(stages, new DateOnly(2025, 2, 1), new DateOnly(2025, 7, 31), isCutShort: false);
        Assert.Equal(
            [
                "canopy_work.topping.0 was never done: its day, 2026-01-01, lies outside the season that was "
                    + "simulated, 2025-02-01 to 2025-07-31.",
                $"canopy_work.topping.1 was never done: shoots reached {longest} m on average at most, not 5 m.",
                "canopy_work.topping.2 was never done: veraison was not reached.",
                "canopy_work.topping.3 was never done: the season ended on 2025-07-31, before its day, 2025-08-30.",
                "canopy_work.topping.4 was never done: the target sugar was not reached.",
            ],
            work.Worker.Warnings);
    }

    /// <summary>
    /// A season that was only asked for to a day has no fault in work that comes later; what would never come it has.
    /// </summary>
    [Fact]
    public void A_season_cut_short_blames_no_later_work()
    {
        var work = new WorkCase(new CanopyWork
        {
            Topping = [new Topping { On = Day.AddDays(30), Nodes = 12 }, new Topping { On = new DateOnly(2024, 6, 1), Nodes = 12 }],
        });
        work.Worker.Close(default, new DateOnly(2025, 2, 1), Day, isCutShort: true);
        Assert.Equal(
            ["canopy_work.topping.1 was never done: its day, 2024-06-01, lies outside the season that was simulated, "
            + "2025-02-01 to 2025-06-01."],
            work.Worker.Warnings);
    }

    [Fact]
    public void Two_steps_that_fall_on_one_day_say_so()
    {
        var work = new WorkCase(new CanopyWork
        {
            ClusterThinning =
                [new ClusterThinning { On = Day, Share = 0.2 },
                new ClusterThinning { Stage = WorkStage.Bloom, ClustersPerShoot = 1 }],
            LeafRemoval =
            [
                new LeafRemoval { On = Day, Side = CanopySide.Right },
                new LeafRemoval { Stage = WorkStage.Bloom, Side = CanopySide.Left },
                new LeafRemoval { Stage = WorkStage.Bloom, Side = CanopySide.Left, From = 0.5, To = 0.8 },
            ],
        });
        work.Do(Day, new StagesReached(Day.AddDays(-50), Day, null, null));
        Assert.Equal(5, work.Worker.Done.Count);
        Assert.Equal(
            ["canopy_work.cluster_thinning.1 on 2025-06-01: canopy_work.cluster_thinning.0 fell on the same day; both "
            + "were done, this one last."],
            work.Worker.Warnings);
    }

    [Fact]
    public void Tucking_holds_the_nodes_that_there_are()
    {
        var work = new WorkCase(new CanopyWork
        {
            ShootsLed = ShootLeading.WhenTucked,
            Tucking = [new Tucking { On = Day }, new Tucking { On = Day.AddDays(1) }, new Tucking { On = Day.AddDays(9) }],
        });
        foreach (var shoot in work.Shoots) shoot.HeldNodes = 0;
        work.Do();
        var held = work.Shoots.Select(shoot => shoot.Phytomers.Count).ToList();
        Assert.Equal(held, work.Shoots.Select(shoot => shoot.HeldNodes ?? -1));
        work.Do(Day.AddDays(1));
        Assert.Equal(
            ["canopy_work.tucking.1 on 2025-06-02: no shoot had grown since the last tucking, so none was tucked."],
            work.Worker.Warnings);
        work.Grown.Grow(5);
        Assert.Equal(held, work.Shoots.Select(shoot => shoot.HeldNodes ?? -1));
        Assert.True(work.Do(Day.AddDays(9)).CanopyChanged);
        Assert.True(work.Shoots.Sum(shoot => shoot.HeldNodes) > held.Sum());
    }

    [Fact]
    public void What_grows_after_a_spray_is_not_covered()
    {
        var work = new WorkCase(new CanopyWork { Sprays = [new Spray { On = Day, Label = "first", To = 0.5 }, new Spray { On = Day.AddDays(9), Label = "second" }] });
        Assert.Equal(0, Covered());
        Assert.False(work.Do().CanopyChanged);
        var first = Covered();
        Assert.Equal(work.Worker.Done[0].LeafAreaM2PerVine, first, 1e-12);
        Assert.InRange(first, 0.1 * Area(), 0.9 * Area());
        work.Grown.Grow(9);
        Assert.Equal(first, Covered(), 1e-12);
        work.Do(Day.AddDays(9));
        Assert.Equal(Area(), Covered(), 1e-12);
        Assert.Equal(["sprayed: first, up to 0.5 m over the cordon", "sprayed: second"],
            work.Worker.Done.Select(done => done.What));

        double Covered() => work.Canopy.Leaves().Sum(leaf => leaf.SprayedArea);
        double Area() => work.Canopy.Leaves().Sum(leaf => leaf.Area);
    }

    [Fact]
    public void A_spray_that_meets_no_leaf_says_so()
    {
        var work = new WorkCase(new CanopyWork { Sprays = [new Spray { On = Day, Label = "high", From = 2.8 }] });
        work.Do();
        Assert.Equal(
            ["canopy_work.sprays.0 on 2025-06-01: no leaf hung from 2.8 m over the cordon up, so none was sprayed."],
            work.Worker.Warnings);
    }

    // By hand: 100 mm, 90 % full; 30 mm fill it and 20 drain.
    [Fact]
    public void Water_that_the_soil_cannot_hold_drains()
    {
        var parameters = new SoilParameters
        {
            TranspirableWater = 100,
            InitialShare = 0.9,
            Irrigation = [new Irrigation { On = Day, Amount = 5 }, new Irrigation { On = Day.AddDays(1), Amount = 25 }],
        };
        var scenario = GrownCanopy.Scenario() with { Soil = parameters };
        var soil = new SoilWater(parameters);
        var worker = new CanopyWorker(scenario, soil);
        var bare = VinePlanting.Plant(scenario);
        worker.Apply(bare, default, Day);
        Assert.Equal((95, 5), (soil.Stored, soil.Irrigated));
        worker.Apply(bare, default, Day.AddDays(1));
        Assert.Equal((100, 30), (soil.Stored, soil.Irrigated));
        Assert.Equal(["irrigated with 5 mm", "irrigated with 25 mm"], worker.Done.Select(done => done.What));
        Assert.Equal(["soil.irrigation.1 on 2025-06-02: the soil was full: 20 of 25 mm drained."], worker.Warnings);
    }

    /// <summary>Everything on one day, on a vine with fruit: what is missing is what was booked.</summary>
    [Fact]
    public void All_work_of_one_day_closes_the_account()
    {
        var work = new WorkCase(
            new CanopyWork
            {
                ShootThinning = [new ShootThinning { On = Day, ShootsPerVine = 14, First = ThinningOrder.Crowded }],
                SideHedging = [new SideHedging { On = Day, Width = 0.5 }],
                Topping = [new Topping { On = Day, Height = 1.7 }],
                LateralRemoval = [new LateralRemoval { On = Day, Share = 0.5 }],
                LeafRemoval = [new LeafRemoval { On = Day, Side = CanopySide.Morning, Share = 0.7 }],
                ClusterThinning = [new ClusterThinning { On = Day, Share = 0.3 }],
                Sprays = [new Spray { On = Day, Label = "cover" }],
            },
            days: 50);
        work.Grown.Set();
        var (missing, lost) = work.DoAndWeigh();
        Assert.Equal(7, work.Worker.Done.Count);
        Assert.Equal(missing, lost, 1e-9 * lost);
        var vine = work.Canopy.Vines[0];
        Assert.Equal(vine.Clusters().Sum(cluster => cluster.Berries ?? 0), vine.Crop.Berries, 1e-6);
        Assert.Equal(vine.RemovedLeafArea,
            work.Worker.Done.Where(done => done.Action != "sprays").Sum(done => done.LeafAreaM2PerVine), 1e-12);
        Assert.All(vine.AllShoots(), shoot =>
            Assert.True(
                shoot.UnfoldedNodes <= shoot.Phytomers.Count && shoot.NodeProgress < shoot.Phytomers.Count + 1));
    }
}
