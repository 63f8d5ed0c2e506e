using CanopySim.Plants;
using CanopySim.Results;
using CanopySim.Training;
using CanopySim.Water;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Seasons;

/// <summary>How the vine answers to work: sizes against what is published or said, on a short piece of row at draft quality.</summary>
public class CanopyWorkSeasonTests(UnalteredSeason unaltered) : IClassFixture<UnalteredSeason>
{
    private static readonly WeatherSeries Weather = SeasonCases.Northern(SeasonCases.Small);

    private DateOnly Bloom => unaltered.Result.Summary.Dates.Bloom!.Value;

    // 1 to 3 laterals push below a cut in 7 to 14 d, 3 to 8 leaves each: general, from memory; tip removal pushes the laterals
    // next to the cut: Vasconcelos & Castagnoli 2001, Practical Winery. Here in July, when uncut shoots grow no more laterals.
    [Fact]
    public void A_topping_in_July_brings_laterals_at_the_cut_within_two_weeks()
    {
        const int Nodes = 14;
        var day = new DateOnly(2025, 7, 10);
        var topped = Small(new CanopyWork { Topping = [new Topping { On = day, Nodes = Nodes }] });
        var before = LeavesUnder(CanopyOn(topped, day.AddDays(-1)));
        var fortnight = LeavesUnder(CanopyOn(topped, day.AddDays(14)));
        var later = LeavesUnder(CanopyOn(topped, day.AddDays(35)));
        var uncut = LeavesUnder(CanopyOn(SeasonCases.Small, day.AddDays(14)));
        // A lateral pushes where at least a leaf has unfolded since; shoots that were shorter than the cut have none.
        var pushing = Grown(before, fortnight).Average(shoot => shoot.Count(leaves => leaves >= 1));
        var resting = Grown(before, uncut).Average(shoot => shoot.Count(leaves => leaves >= 1));
        Assert.InRange(pushing, 1, 3.2);
        Assert.InRange(resting, 0, 0.5);
        var most = Grown(before, later).Average(shoot => shoot.Max());
        Assert.InRange(most, 3, 8);

        // Unfolded leaves of the laterals on the six nodes under the cut, shoot by shoot.
        static Dictionary<ShootId, int[]> LeavesUnder(Canopy canopy) => canopy.PrimaryShoots()
            .Where(shoot => shoot.Phytomers.Count >= Nodes)
            .ToDictionary(shoot => shoot.Id, shoot => shoot.Phytomers.Take(Nodes).TakeLast(6)
                .Select(node => node.Lateral?.Phytomers.Count(small => small.Leaf?.HasUnfolded == true) ?? 0).ToArray());

        static IEnumerable<int[]> Grown(Dictionary<ShootId, int[]> before, Dictionary<ShootId, int[]> after) => before.Keys
            .Where(after.ContainsKey).Select(id => after[id].Zip(before[id], (now, then) => now - then).ToArray());
    }

    // Length of a shoot by the number on a vine, 152, 60 and 41 cm at 36, 191 and 314 (Kliewer & Dokoozlian 2005, table 4): between
    // the first two as number to the power of -0.56; five shoots of nine would be 1.39 times as long. Thinned in May, after a part of
    // their growth, they get a part of that.
    [Fact]
    public void Shoots_that_stay_after_thinning_are_longer_and_heavier()
    {
        var thinned = Small(new CanopyWork { ShootThinning = [new ShootThinning { WhenShootsReach = 0.2, ShootsPerVine = 5 }] });
        var (few, many) = (CanopyOn(thinned, UnalteredSeason.Until), CanopyOn(SeasonCases.Small, UnalteredSeason.Until));
        Assert.Equal((5, 9), (few.PrimaryShoots().Count(), many.PrimaryShoots().Count()));
        // The same shoots, so that it is not the choice that makes the difference.
        var ids = few.PrimaryShoots().Select(shoot => shoot.Id).ToHashSet();
        var same = many.PrimaryShoots().Where(shoot => ids.Contains(shoot.Id)).ToList();
        Assert.InRange(few.PrimaryShoots().Average(shoot => shoot.Length) / same.Average(shoot => shoot.Length), 1.1, 1.39);
        Assert.InRange(few.PrimaryShoots().Average(shoot => shoot.StemDryMass) / same.Average(shoot => shoot.StemDryMass), 1.15, 2);
    }

    // Pulling the leaves of the basal nodes before bloom lowers set, by some 15 to 45 % (Poni et al. 2006, Am J Enol Vitic
    // 57:397-407, from memory); after set it cannot.
    [Fact]
    public void Leaves_pulled_before_bloom_lower_set_and_after_it_do_not()
    {
        var whole = BerriesPerCluster(SeasonCases.Small);
        var early = BerriesPerCluster(Small(Pulled(Bloom.AddDays(-14))));
        var late = BerriesPerCluster(Small(Pulled(Bloom.AddDays(5))));
        Assert.InRange(1 - (early / whole), 0.15, 0.45);
        Assert.Equal(whole, late, 1e-9);

        static CanopyWork Pulled(DateOnly day) => new() { LeafRemoval = [new LeafRemoval { On = day, From = -0.3, To = 0.4 }] };

        double BerriesPerCluster(Scenario scenario) => CanopyOn(scenario, Bloom.AddDays(6)).Vines[0].Clusters().Average(cluster => cluster.Berries!.Value);
    }

    // Cutting crop raises the rate of sugar: Parker et al. 2015, Aust J Grape Wine Res 21:266-276. The leaves of the short piece feed its
    // own crop in full, so it bears more than twice that here.
    [Fact]
    public void Fewer_clusters_gain_sugar_faster()
    {
        var until = new DateOnly(2025, 9, 5);
        var heavy = SeasonCases.Small with { Fruit = SeasonCases.Small.Fruit with { BerriesPerCluster = 250 } };
        var whole = SeasonCases.Run(heavy, until);
        var thinned = SeasonCases.Run(
            heavy with { CanopyWork = new CanopyWork { ClusterThinning = [new ClusterThinning { Stage = WorkStage.Bloom, DaysAfter = 20, Share = 0.5 }] } },
            until);
        Assert.InRange(Rate(thinned) / Rate(whole), 1.08, 2);
        Assert.InRange(thinned.Days[^1].FruitDryMassGPerVine / whole.Days[^1].FruitDryMassGPerVine, 0.5, 0.85);
        AssertCloses(thinned);

        static double Rate(SeasonResult season)
        {
            var ripening = season.Days.Where(day => day.SugarBrix is not null).Take(21).ToList();
            Assert.Equal(21, ripening.Count);
            return (ripening[^1].SugarBrix!.Value - ripening[0].SugarBrix!.Value) / 20;
        }
    }

    [Fact]
    public void A_season_of_all_work_closes_tells_what_was_done_and_repeats_itself()
    {
        var day = Bloom.AddDays(12);
        var work = new CanopyWork
        {
            ShootThinning = [new ShootThinning { WhenShootsReach = 0.15, ShootsPerMeter = 12, First = ThinningOrder.Crowded }],
            SideHedging = [new SideHedging { On = day, Width = 0.4 }],
            Topping = [new Topping { On = day, Height = 1.6 }],
            LateralRemoval = [new LateralRemoval { On = day }],
            LeafRemoval = [new LeafRemoval { On = day, Side = CanopySide.Morning, Share = 0.6 }],
            ClusterThinning = [new ClusterThinning { On = day, ClustersPerShoot = 1 }],
            Sprays = [new Spray { Stage = WorkStage.Bloom, Label = "cover" }, new Spray { On = day, Label = "cover" }],
        };
        var soil = SeasonCases.Small.Soil with { Irrigation = [new Irrigation { On = day, Amount = 15 }] };
        var scenario = Small(work) with { Soil = soil };
        var until = day.AddDays(10);
        var season = SeasonCases.Run(scenario, until);
        AssertCloses(season);
        Assert.Equal(
            ["shoot_thinning", "sprays", "side_hedging", "topping", "lateral_removal", "leaf_removal", "cluster_thinning", "sprays", "irrigation"],
            season.Work.Select(done => done.Action));
        Assert.Empty(season.Summary.Warnings);
        Assert.Contains(season.Summary.Cautions, caution => caution.Contains("product label", StringComparison.Ordinal));
        Assert.All(unaltered.Result.Days, row => Assert.Null(row.LeafAreaUnsprayedM2PerVine));
        Assert.Empty(unaltered.Result.Summary.Cautions);

        // Before the first spray all leaf is bare; on a day of spraying what grows in the evening; then more from day to day.
        Assert.Equal(On(Bloom.AddDays(-1)).LeafAreaM2PerVine, On(Bloom.AddDays(-1)).LeafAreaUnsprayedM2PerVine!.Value, 1e-12);
        Assert.InRange(On(day).LeafAreaUnsprayedM2PerVine!.Value, 0, 0.05 * On(day).LeafAreaM2PerVine);
        Assert.True(On(until).LeafAreaUnsprayedM2PerVine > 2 * On(day).LeafAreaUnsprayedM2PerVine);

        // Cover by zone sums up to the day's row, and the tips are those of the row.
        Assert.Equal([(0, Bloom), (1, day)], season.Sprays.Select(spray => (spray.Number, spray.Date)));
        var together = season.SprayCover.Where(zone => zone.Spray is null).ToList();
        Assert.Equal(On(until).LeafAreaUnsprayedM2PerVine!.Value, together.Sum(zone => zone.UncoveredArea), 1e-9);
        Assert.Equal(On(until).LeafAreaM2PerVine, together.Sum(zone => zone.LeafArea), 1e-9);
        Assert.True(Since(0) > Since(1) && Since(1) > 0);
        Assert.Equal(
            season.Days.Where(row => season.Tips.Any(tips => tips.Date == row.Date)).Select(row => (row.GrowingTipsFraction, row.SoilWaterFraction)),
            season.Tips.Select(tips => (tips.GrowingFreely, tips.SoilWaterFraction)));
        Assert.All(season.Tips, tips => Assert.Equal(1, tips.GrowingFreely + tips.Slowing + tips.Stopped, 1e-12));
        Assert.True(On(until).GrowingTipsFraction < 1 && season.Tips[^1].Stopped > 0.5);

        double Since(int spray) => season.SprayCover.Where(zone => zone.Spray == spray).Sum(zone => zone.UncoveredArea);

        var again = Simulation.Run(scenario, Weather, SeasonCases.UtcOffset, SeasonCases.Draft(until) with { Threads = 1 });
        Assert.Equal(season.Days, again.Days);
        Assert.Equal(season.Work, again.Work);

        DayRow On(DateOnly date) => season.Days.Single(row => row.Date == date);
    }

    private static Scenario Small(CanopyWork work) => SeasonCases.Small with { CanopyWork = work };

    private static Canopy CanopyOn(Scenario scenario, DateOnly date) =>
        Simulation.CanopyOn(scenario, Weather, SeasonCases.UtcOffset, SeasonCases.Draft(), date);

    private static void AssertCloses(SeasonResult result) => Assert.InRange(result.Summary.Checks.CarbonClosureMaxRelative, 0, 1e-9);
}
