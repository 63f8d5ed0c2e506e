using CanopySim.Water;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Water;

public class SoilWaterPropertyTests
{
    private static readonly Gen<SoilParameters> AnySoil =
        Gen.Select(Gen.Double[20, 600], Gen.Double[0, 1], Gen.Double[0, 3], Gen.Double[0, 1], Gen.Double[0, 100]).Select((water, share, evaporation, below, amount) => new SoilParameters
        {
            TranspirableWater = water,
            InitialShare = share,
            GroundEvaporation = evaporation,
            IrrigateBelow = below,
            IrrigationAmount = amount,
        });

    /// <summary>Any soil under any rain, cloudbursts among it, with any irrigation.</summary>
    [Fact]
    public void The_store_stays_between_empty_and_full_and_gains_no_more_than_it_is_given() =>
        Gen.Select(AnySoil, Gen.Select(Gen.Double[0, 400], Gen.Double[0, 15]).Array[60]).Sample((soil, days) =>
        {
            var water = new SoilWater(soil);
            foreach (var (rain, transpiration) in days)
            {
                var (stored, irrigated) = (water.Stored, water.Irrigated);
                water.CloseDay(rain, transpiration);
                Assert.InRange(water.Stored, 0, soil.TranspirableWater);
                Assert.InRange(water.Fraction, 0, 1);
                Assert.True(water.Irrigated >= irrigated);
                Assert.True(water.Stored - stored <= rain + water.Irrigated - irrigated + 1e-9);
                // What it loses the vines or the ground took, but for what ran through a full store.
                Assert.True(stored - water.Stored <= transpiration + soil.GroundEvaporation + 1e-9);
            }
        }, iter: 2_000);
}
