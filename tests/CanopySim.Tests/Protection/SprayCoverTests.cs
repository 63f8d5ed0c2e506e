using CanopySim.Protection;
using CanopySim.Tests.Training;
using CanopySim.Training;
using Xunit;

namespace CanopySim.Tests.Protection;

public class SprayCoverTests
{
    // A hand count, leaf by leaf: what each blade had at the first spray and at the second, and what it has now.
    [Fact]
    public void Leaf_that_came_after_each_spray_is_counted_blade_by_blade()
    {
        var work = new WorkCase(new CanopyWork
        {
            Sprays = [new Spray { On = WorkCase.Day, Label = "first" }, new Spray { On = WorkCase.Day.AddDays(6), Label = "second" }],
        });
        work.Do();
        var first = work.Canopy.Leaves().ToDictionary(leaf => leaf.Id, leaf => leaf.Area);
        work.Grown.Grow(6);
        work.Do(WorkCase.Day.AddDays(6));
        var second = work.Canopy.Leaves().ToDictionary(leaf => leaf.Id, leaf => leaf.Area);
        work.Grown.Grow(6);

        var cover = SprayCover.Of(work.Scenario, work.Canopy, [0, 1]);
        Assert.Equal(Sum(first), Uncovered(0), 1e-12);
        Assert.Equal(Sum(second), Uncovered(1), 1e-12);
        Assert.True(Uncovered(0) > Uncovered(1) && Uncovered(1) > 0);
        var vines = work.Canopy.Vines.Count;
        Assert.Equal(
            work.Canopy.Leaves().Count(leaf => leaf.HasUnfolded && first.GetValueOrDefault(leaf.Id) == 0),
            vines * cover.Where(zone => zone.Spray == 0).Sum(zone => zone.NewLeaves), 1e-9);
        Assert.Equal(
            work.Canopy.Leaves().Sum(leaf => leaf.Area), vines * cover.Where(zone => zone.Spray == 1).Sum(zone => zone.LeafArea), 1e-12);

        double Uncovered(int spray) => cover.Where(zone => zone.Spray == spray).Sum(zone => zone.UncoveredArea);
        double Sum(Dictionary<CanopySim.Plants.LeafId, double> then) =>
            work.Canopy.Leaves().Sum(leaf => leaf.Area - then.GetValueOrDefault(leaf.Id)) / work.Canopy.Vines.Count;
    }

    [Fact]
    public void A_spray_of_the_fruit_zone_leaves_the_rest_uncovered()
    {
        var work = new WorkCase(new CanopyWork { Sprays = [new Spray { On = WorkCase.Day, Label = "low", From = 0, To = 0.4 }] });
        work.Do();
        var cover = SprayCover.Of(work.Scenario, work.Canopy, [0]);
        var fruit = cover.Single(zone => zone.Zone == CoverZone.FruitZone);
        Assert.True(fruit.LeafArea > 0);
        Assert.Equal(0, fruit.UncoveredArea);
        Assert.Equal(0, fruit.NewLeaves);
        Assert.All(cover.Where(zone => zone.Zone != CoverZone.FruitZone), zone => Assert.Equal(zone.LeafArea, zone.UncoveredArea));
        Assert.True(cover.Single(zone => zone.Zone == CoverZone.Shoots).NewLeaves > 0);
    }

    [Fact]
    public void Without_a_spray_there_is_nothing_to_tell() =>
        Assert.Empty(SprayCover.Of(new WorkCase(new CanopyWork()).Scenario, new WorkCase(new CanopyWork()).Canopy, []));
}
