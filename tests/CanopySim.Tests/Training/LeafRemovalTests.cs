using CanopySim.Geometry;
using CanopySim.Tests.Plants;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Training;

public class LeafRemovalTests
{
    private static readonly DateOnly Day = WorkCase.Day;

    [Fact]
    public void The_fruit_zone_is_bared_and_the_rest_stays()
    {
        var work = Case(new LeafRemoval { On = Day });
        var before = Leaves(work);
        var (missing, lost) = work.DoAndWeigh();
        var after = Leaves(work);
        Assert.Equal(missing, lost, 1e-9 * lost);
        // The hedge's fruit zone reaches 0.4 m up from its cordon.
        Assert.DoesNotContain(after, leaf => InZone(leaf.Value, 0, 0.4));
        Assert.Equal(before.Where(leaf => !InZone(leaf.Value, 0, 0.4)).Select(leaf => leaf.Key), after.Keys);
        Assert.True(after.Count < before.Count);
        Assert.Equal(before.Count - after.Count, work.Worker.Done[0].Leaves);
        Assert.All(work.Shoots, shoot => Assert.False(shoot.TipStopped));
    }

    // Rows to the north: the right side faces east. To the south it is the left, and rows across have none.
    [Theory]
    [InlineData(0, CanopySide.Morning, true)]
    [InlineData(0, CanopySide.Afternoon, false)]
    [InlineData(180, CanopySide.Morning, false)]
    [InlineData(300, CanopySide.Morning, true)]
    [InlineData(120, CanopySide.Afternoon, true)]
    [InlineData(45, CanopySide.Right, true)]
    [InlineData(45, CanopySide.Left, false)]
    public void One_side_alone(double azimuth, CanopySide side, bool right)
    {
        var block = GrownCanopy.Scenario();
        var work = Case(block with { Rows = block.Rows with { Azimuth = azimuth } }, new LeafRemoval { On = Day, Side = side });
        var before = Leaves(work);
        work.Do();
        var after = Leaves(work);
        var gone = before.Where(leaf => !after.ContainsKey(leaf.Key)).ToList();
        Assert.NotEmpty(gone);
        Assert.All(gone, leaf => Assert.Equal(right, leaf.Value.X > 0));
        Assert.DoesNotContain(after, leaf =>
            InZone(leaf.Value, 0, 0.4) && leaf.Value.X > 0 == right && leaf.Value.X != 0);
    }

    [Theory]
    [InlineData(0.0, true)]
    [InlineData(74.9, true)]
    [InlineData(80.0, null)]
    [InlineData(100.0, null)]
    [InlineData(106.0, false)]
    [InlineData(270.0, null)]
    public void Rows_across_have_no_morning_side(double azimuth, bool? right) =>
        Assert.Equal(right, RowSides.IsRightInTheMorning(azimuth));

    [Fact]
    public void A_share_goes_by_seed()
    {
        var half = new LeafRemoval { On = Day, Share = 0.5 };
        Assert.Equal(Left(1), Left(1));
        Assert.NotEqual(Left(1), Left(2));
        var whole = Case(new LeafRemoval { On = Day });
        whole.Do();
        var work = Case(half);
        work.Do();
        Assert.InRange(work.Worker.Done[0].Leaves - (0.5 * whole.Worker.Done[0].Leaves), 0, 0.5);

        // The seed moves the choice alone: the canopy grows from the first in both.
        List<int> Left(ulong seed)
        {
            var here = Case(half);
            new CanopyWorker(here.Scenario with { Seed = seed }).Apply(here.Canopy, default, Day);
            return [.. Leaves(here).Keys];
        }
    }

    [Fact]
    public void Leaves_of_laterals_may_stay()
    {
        var work = Case(new LeafRemoval { On = Day, Laterals = false });
        var small = Leaves(work).Where(leaf => IsOfLateral(work, leaf.Key)).Select(leaf => leaf.Key).ToList();
        Assert.NotEmpty(small);
        work.Do();
        Assert.Equal(small, Leaves(work).Where(leaf => IsOfLateral(work, leaf.Key)).Select(leaf => leaf.Key));
    }

    [Fact]
    public void On_a_slope_the_zone_follows_the_ground()
    {
        var work = Case(GrownCanopy.Scenario(slope: 30, aspect: 90), new LeafRemoval { On = Day });
        work.Do();
        var places = new CanopyPlaces(work.Scenario);
        Assert.DoesNotContain(
            work.Shoots.SelectMany(places.Blades).Where(blade => blade.Leaf.HasUnfolded),
            blade => places.HeightOverGround(blade.Middle) is > 0.9 and < 1.3);
    }

    [Fact]
    public void A_zone_or_a_share_that_meets_nothing_says_so()
    {
        var work = Case(
            new LeafRemoval { On = Day, From = 2.5, To = 3 },
            new LeafRemoval { On = Day.AddDays(1), From = 0.05, To = 0.07, Share = 0.01 });
        work.Do();
        work.Do(Day.AddDays(1));
        Assert.Empty(work.Worker.Done);
        Assert.Equal(
            "canopy_work.leaf_removal.0 on 2025-06-01: no unfolded leaf hung from 2.5 to 3 m over the cordon (both "
            + "sides), so none was pulled.",
            work.Worker.Warnings[0]);
        Assert.Matches(
            @"^canopy_work\.leaf_removal\.1 on 2025-06-02: a share of 0\.01 of the [0-9]+ leaves there is less than one leaf, so none was pulled\.$",
            work.Worker.Warnings[1]);
    }

    [Fact]
    public void Laterals_taken_off_do_not_come_again()
    {
        var work = new WorkCase(new CanopyWork { LateralRemoval = [new LateralRemoval { On = Day, From = 0, To = 0.5 }] });
        var (missing, lost) = work.DoAndWeigh();
        Assert.Equal(missing, lost, 1e-9 * lost);
        Assert.True(lost > 0);
        work.Grown.Grow(20);
        var places = new CanopyPlaces(work.Scenario);
        var (bare, bearing) = (0, 0);
        foreach (var shoot in work.Shoots)
        {
            var points = places.Nodes(shoot);
            for (var i = 0; i < shoot.Phytomers.Count; i++)
            {
                if (shoot.Phytomers[i].LateralRemoved) bare++;
                if (shoot.Phytomers[i] is { LateralRemoved: true, Lateral: not null })
                    Assert.Fail("a lateral came again");
                if (points[i + 1].Z > 1.45 && shoot.Phytomers[i].Lateral is not null) bearing++;
            }
        }

        Assert.True(bare > 20 && bearing > 20, $"{bare} bare, {bearing} bearing");
    }

    [Fact]
    public void Where_no_lateral_stands_it_says_so()
    {
        var work = new WorkCase(new CanopyWork { LateralRemoval = [new LateralRemoval { On = Day }] }, days: 8);
        work.Do();
        Assert.Equal(["canopy_work.lateral_removal.0 on 2025-06-01: no lateral stood in the fruit zone, so none was taken off."], work.Worker.Warnings);
    }

    private static bool InZone(System.Numerics.Vector3 middle, double from, double to) =>
        middle.Z - 0.9f >= from && middle.Z - 0.9f <= to;

    private static bool IsOfLateral(WorkCase work, int leaf) =>
        work.Canopy.Leaves().Single(found => found.Id.Value == leaf).Shoot.Order == 2;

    // Unfolded leaves by their number, with their middles.
    private static SortedDictionary<int, System.Numerics.Vector3> Leaves(WorkCase work)
    {
        var places = new CanopyPlaces(work.Scenario);
        return new(work.Shoots.SelectMany(places.Blades).Where(blade => blade.Leaf.HasUnfolded).ToDictionary(blade => blade.Leaf.Id.Value, blade => blade.Middle));
    }

    private static WorkCase Case(params LeafRemoval[] steps) => Case(GrownCanopy.Scenario(), steps);

    private static WorkCase Case(Scenario block, params LeafRemoval[] steps) =>
        new(new CanopyWork { LeafRemoval = steps }, block);
}
