using CanopySim.Results;
using CanopySim.Tests.Seasons;
using Xunit;

namespace CanopySim.Tests.Fitting;

/// <summary>Seasons of an ensemble's members against drafts of the same vines.</summary>
public class RoughSeasonTests
{
    private static readonly Scenario Block = SeasonCases.Small with
    {
        Season = SeasonCases.Small.Season with { Harvest = HarvestRule.TargetSugar },
    };

    // Measured on this vine: 1.7 % more carbon. Ripeness may be a day off.
    [Fact]
    public void Members_make_the_carbon_of_drafts_and_are_ripe_with_them()
    {
        var (rough, draft) = (Run(Quality.Rough), Run(Quality.Draft));
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"carbon {Carbon(rough) / Carbon(draft):F4}, leaf {Leaf(rough) / Leaf(draft):F4}, {rough.Summary.Dates.TargetSugar} and {draft.Summary.Dates.TargetSugar}");
        Assert.InRange(Carbon(rough) / Carbon(draft), 0.98, 1.02);
        Assert.InRange(Leaf(rough) / Leaf(draft), 0.98, 1.02);
        Assert.NotNull(draft.Summary.Dates.TargetSugar);
        Assert.InRange(rough.Summary.Dates.TargetSugar!.Value.DayNumber - draft.Summary.Dates.TargetSugar!.Value.DayNumber, -1, 1);
    }

    private static double Carbon(SeasonResult season) => season.Days.Sum(day => day.NetAssimilationGCo2PerVine);

    private static double Leaf(SeasonResult season) => season.Days.Max(day => day.LeafAreaM2PerVine);

    private static SeasonResult Run(Quality quality) => Simulation.Run(
        Block, SeasonCases.Northern(Block), SeasonCases.UtcOffset, new SeasonOptions { Quality = quality, Threads = 2, IsAssessed = false });
}
