using CanopySim.Files.Charts;
using CanopySim.Results;
using Xunit;

namespace CanopySim.Files.Tests.Charts;

public class FeedingLeavesTest
{
    [Fact]
    public void ItIsTheShortestRunWithOverHalf()
    {
        // 0.131 + 0.152 + 0.163 + 0.144 = 0.590; no three classes beside each other hold over half.
        var leaves = FeedingLeaves.Of(InventedSeason.Full().Summary);
        Assert.NotNull(leaves);
        Assert.Equal((60, 100), (leaves.FromD, leaves.ToD!.Value));
        Assert.Equal(0.590, leaves.Share, 1e-12);
        Assert.Equal("60 to 100 days old", leaves.AgesText);
        Assert.Equal("59 %", leaves.PercentText);
    }

    [Fact]
    public void OfRunsAsShortTheOneWithMoreCounts()
    {
        var leaves = FeedingLeaves.Of([new(0, 10, 0.2), new(10, 20, 0.35), new(20, 30, 0.4), new(30, 40, 0.05)]);
        Assert.Equal((10, 30), (leaves!.FromD, leaves.ToD!.Value));
    }

    [Fact]
    public void LossesOfYoungLeavesCountAgainstARun()
    {
        var leaves = FeedingLeaves.Of([new(0, 10, 0.45), new(10, 20, -0.2), new(20, 30, 0.35), new(30, 40, 0.4)]);
        Assert.Equal((20, 40), (leaves!.FromD, leaves.ToD!.Value));
    }

    [Fact]
    public void AnOpenClassIsSaidToBeOpen() =>
        Assert.Equal("150 days and older", FeedingLeaves.Of([new(140, 150, 0.1), new(150, 9999, 0.9)])!.AgesText);

    [Fact]
    public void WithoutGainThereAreNone()
    {
        Assert.Null(FeedingLeaves.Of(Array.Empty<LeafAgeShare>()));
        Assert.Null(FeedingLeaves.Of([new LeafAgeShare(0, 10, double.NaN)]));
        Assert.Null(FeedingLeaves.Of(InventedSeason.WithoutFruit().Summary));
    }
}
