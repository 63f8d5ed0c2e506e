using CanopySim.Carbon;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Carbon;

public class SinkSharingTests
{
    private static readonly Gen<double[]> AnyDemands = Gen.Double[0, 50].Select(demand => demand < 5 ? 0 : demand).Array[6];

    private static readonly Gen<double[]> AnyWeights = Gen.Double[0.05, 10].Array[6];

    // By hand: weights x demands 6, 10, 20. Sink 0 is full with 2; the 18 that remain go 10 : 20.
    [Fact]
    public void Shares_again_what_a_full_sink_leaves()
    {
        var allocated = new double[3];
        var left = SinkSharing.Share(20, [2, 10, 20], [3, 1, 1], allocated);
        Assert.Equal(0, left);
        Assert.Equal([2.0, 6.0, 12.0], allocated.Select(part => Math.Round(part, 12)));
    }

    // By hand: nobody is full, so 3.6 goes 6 : 10 : 20.
    [Fact]
    public void Shares_by_weight_and_demand()
    {
        var allocated = new double[3];
        SinkSharing.Share(3.6, [2, 10, 20], [3, 1, 1], allocated);
        Assert.Equal([0.6, 1.0, 2.0], allocated.Select(part => Math.Round(part, 12)));
    }

    [Fact]
    public void Never_gives_more_than_is_asked_nor_loses_any()
    {
        Gen.Select(Gen.Double[0, 200], AnyDemands, AnyWeights).Sample((supply, demands, weights) =>
        {
            var allocated = new double[demands.Length];
            var left = SinkSharing.Share(supply, demands, weights, allocated);
            for (var i = 0; i < demands.Length; i++) Assert.InRange(allocated[i], 0, demands[i]);
            Assert.Equal(supply, allocated.Sum() + left, 1e-9);
            Assert.Equal(Math.Max(0, supply - demands.Sum()), left, 1e-9);
        });
    }

    [Fact]
    public void A_heavier_sink_fares_no_worse()
    {
        Gen.Select(Gen.Double[0, 200], AnyDemands, AnyWeights).Sample((supply, demands, weights) =>
        {
            double FirstSinkAt(double weight)
            {
                var allocated = new double[demands.Length];
                SinkSharing.Share(supply, demands, [weight, .. weights[1..]], allocated);
                return allocated[0];
            }

            Assert.True(FirstSinkAt(2 * weights[0]) >= FirstSinkAt(weights[0]) - 1e-9);
        });
    }
}
