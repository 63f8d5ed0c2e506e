using CanopySim.Carbon;
using CanopySim.Plants;
using CanopySim.Protection;
using CanopySim.Tests.Plants;
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
        double Sum(Dictionary<LeafId, double> then) =>
            work.Canopy.Leaves().Sum(leaf => leaf.Area - then.GetValueOrDefault(leaf.Id)) / work.Canopy.Vines.Count;
    }

    // One shoot by hand, in cm². At the first spray: 90, 80, 30 and a folded 4. A week later they have 90, 80, 70 and 40,
    // and a fifth leaf of 12 has come: the second spray. Then 90, 80, 90 and 70 and 45; a lateral of 15 and a sixth leaf,
    // folded, of 6. Since the first spray: 0 + 0 + 60 + 66 + 45 + 6 = 177, the lateral 15; since the second 0 + 0 + 20 +
    // 30 + 33 + 6 = 89, the lateral 15. The first reached neither the fifth leaf nor the lateral; the sixth is folded.
    [Fact]
    public void A_small_vine_counted_by_hand()
    {
        var scenario = GrownCanopy.Scenario() with
        {
            CanopyWork = new CanopyWork
            {
                Sprays =
                [
                    new Spray { On = WorkCase.Day, Label = "first" },
                    new Spray { On = WorkCase.Day.AddDays(7), Label = "second" },
                ],
            },
        };
        var (worker, shoot) = (new CanopyWorker(scenario), new Shoot(new ShootId(0), new VineId(0), 1, 0.75, 1));
        var vine = new Vine(new VineId(0), 0.75, new VineCarbon(1000, 100));
        vine.Add(shoot);
        var canopy = new Canopy([vine]);
        Grow(90, 80, 30, 4);
        worker.Apply(canopy, default, WorkCase.Day);
        Grow(90, 80, 70, 40, 12);
        worker.Apply(canopy, default, WorkCase.Day.AddDays(7));
        Grow(90, 80, 90, 70, 45, 6);
        var lateral = new Shoot(new ShootId(1), new VineId(0), 2, 0.75, 1);
        shoot.Phytomers[1].Lateral = lateral;
        lateral.Add(Node(lateral, 1, 15));

        var cover = SprayCover.Of(scenario, canopy, [0, 1]);
        Assert.Equal((177.0 + 15, 396.0, 2.0), Sum(0));
        Assert.Equal((89.0 + 15, 396.0, 1.0), Sum(1));
        // What neither reached is what the second did not: it came last to every leaf.
        Assert.Equal(Sum(1), Sum(null));

        (double Uncovered, double All, double New) Sum(int? spray)
        {
            var zones = cover.Where(zone => zone.Spray == spray).ToList();
            return (
                Math.Round(1e4 * zones.Sum(zone => zone.UncoveredArea), 6), Math.Round(1e4 * zones.Sum(zone => zone.LeafArea), 6),
                zones.Sum(zone => zone.NewLeaves));
        }

        void Grow(params double[] areas)
        {
            for (var i = 0; i < areas.Length; i++)
            {
                if (i == shoot.Phytomers.Count) shoot.Add(Node(shoot, i + 1, areas[i]));
                else Set(shoot.Phytomers[i].Leaf!, areas[i]);
            }
        }

        static Phytomer Node(Shoot of, int rank, double squareCentimeters)
        {
            var leaf = new Leaf(new LeafId((100 * of.Order) + rank), of, rank, 0.01);
            Set(leaf, squareCentimeters);
            return new Phytomer(rank, 0.06, leaf) { InternodeLength = 0.05 };
        }

        // A blade of 3 cm has unfolded: 9 cm².
        static void Set(Leaf leaf, double squareCentimeters)
        {
            leaf.Area = squareCentimeters * 1e-4;
            if (squareCentimeters >= 9) leaf.UnfoldedOn ??= WorkCase.Day;
        }
    }

    // The low spray alone reached the fruit zone, the high one alone the rest: together they leave nothing.
    [Fact]
    public void Sprays_of_two_zones_cover_together()
    {
        var work = new WorkCase(new CanopyWork
        {
            Sprays =
            [
                new Spray { On = WorkCase.Day, Label = "low", To = 0.4 },
                new Spray { On = WorkCase.Day, Label = "high", From = 0.4 },
            ],
        });
        work.Do();
        var cover = SprayCover.Of(work.Scenario, work.Canopy, [0, 1]);
        Assert.All(cover.Where(zone => zone.Spray is null), zone => Assert.Equal(0, zone.UncoveredArea));
        Assert.All((int[])[0, 1], spray =>
            Assert.True(cover.Where(zone => zone.Spray == spray).Sum(zone => zone.UncoveredArea) > 0));
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
