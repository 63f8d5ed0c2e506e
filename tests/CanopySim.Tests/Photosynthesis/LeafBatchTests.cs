using CanopySim.Photosynthesis;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>Limits of the batch, and that a leaf's bits are its own.</summary>
public class LeafBatchTests
{
    private static readonly LeafParameters Leaf = new();

    private static readonly LeafEnvironment Summer = new(25, 1.9, 100, 1.5, 420);

    private static readonly LeafState Sunlit = new(1000, 40, 1, 1, 0.12, 1);

    /// <summary>
    /// Hot air brings all tiers and the look for a cooler root to work: alone, at any place, in any company a leaf has the same
    /// answer.
    /// </summary>
    [Theory]
    [InlineData(25, 1.9)]
    [InlineData(41, 3)]
    public void PlaceAndCompanyChangeNoBit(double air, double vaporPressure)
    {
        var environment = new LeafEnvironment(air, vaporPressure, 95, 0.3, 420);
        var parameters = Leaf with { StomatalSlope = 15, Vcmax25 = 120 };
        var batch = new LeafBatch(environment, parameters);
        var leaves = Enumerable.Range(0, 500).Select(index => LeafCases.At(index).Leaf).ToArray();
        var expected = Solve(batch, leaves);
        for (var i = 0; i < leaves.Length; i += 7) Assert.Equal(expected[i], Solve(batch, [leaves[i]])[0]);
        foreach (var shift in new[] { 1, 9, 64, 333 })
        {
            var shifted = Solve(batch, [.. leaves.Skip(shift), .. leaves.Take(shift)]);
            for (var i = 0; i < leaves.Length; i++) Assert.Equal(expected[(i + shift) % leaves.Length], shifted[i]);
        }

        var backward = Solve(batch, [.. leaves.Reverse()]);
        Assert.Equal(expected, backward.Reverse());
    }

    [Theory]
    [InlineData(-5)]
    [InlineData(10)]
    [InlineData(30)]
    public void AtNightALeafOnlyRespires(double air)
    {
        var environment = Summer with { AirTemperatureCelsius = air, VaporPressure = 0.6 * SaturationVaporPressure.At(air) };
        var gas = Solve(new(environment, Leaf), [Sunlit with { AbsorbedPpfd = 0, AbsorbedNir = 0 }])[0];
        Assert.Equal(-gas.DayRespiration, gas.NetAssimilation);
        Assert.Equal(0, gas.GrossAssimilation);
        Assert.Equal((float)Leaf.StomatalFloor, gas.StomatalConductanceToWater);
        Assert.Equal(LeafRespiration.At(gas.LeafTemperatureCelsius, Leaf), gas.DayRespiration, 1e-5);
        Assert.True(gas.LeafTemperatureCelsius < air);
        Assert.True(gas.IntercellularCo2 > environment.Co2);
    }

    [Fact]
    public void DewFallsOnALeafUnderTheDewPoint()
    {
        var environment = new LeafEnvironment(12, 0.99 * SaturationVaporPressure.At(12), 100, 0.3, 420);
        var gas = Solve(new(environment, Leaf), [Sunlit with { AbsorbedPpfd = 0, AbsorbedNir = 0 }])[0];
        Assert.True(gas.LeafTemperatureCelsius < SaturationVaporPressure.DewPoint(environment.VaporPressure));
        Assert.True(gas.Transpiration < 0);
    }

    [Fact]
    public void ALeafWithNothingIsSolvedToo()
    {
        var gas = Solve(new(Summer with { WindSpeed = 0 }, Leaf), [new(0, 0, 0, 0, 0.12, 0), new(2200, 220, 0, 0, 0.12, 0)]);
        foreach (var leaf in gas)
        {
            Assert.Equal(0, leaf.NetAssimilation);
            Assert.Equal(Summer.Co2, leaf.IntercellularCo2, 1e-3);
            Assert.Equal((float)Leaf.StomatalFloor, leaf.StomatalConductanceToWater);
        }

        Assert.True(gas[1].LeafTemperatureCelsius > gas[0].LeafTemperatureCelsius + 20);
    }

    [Fact]
    public void LeavesBeyond46DegreesOnlyRespire()
    {
        var seen = 0;
        for (var air = 38.0; air <= 50; air += 0.5)
        {
            var gas = Solve(new(new(air, 2.5, 100, 1, 420), Leaf), [Sunlit])[0];
            if (gas.LeafTemperatureCelsius <= 46) continue;
            seen++;
            Assert.Equal(-gas.DayRespiration, gas.NetAssimilation);
            Assert.Equal((float)Leaf.StomatalFloor, gas.StomatalConductanceToWater);
        }

        Assert.True(seen >= 5);
    }

    [Fact]
    public void ABatchAllocatesOnlyOnce()
    {
        var batch = new LeafBatch(Summer, Leaf);
        var leaves = Enumerable.Range(0, 300).Select(index => LeafCases.At(index).Leaf).ToArray();
        var results = new LeafGasExchange[leaves.Length];
        var scratch = new LeafBatchScratch();
        batch.Solve(leaves, results, scratch);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var repeat = 0; repeat < 10; repeat++) batch.Solve(leaves, results, scratch);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    private static LeafGasExchange[] Solve(LeafBatch batch, LeafState[] leaves)
    {
        var results = new LeafGasExchange[leaves.Length];
        batch.Solve(leaves, results, new LeafBatchScratch());
        return results;
    }
}
