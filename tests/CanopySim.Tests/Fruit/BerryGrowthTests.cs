using CanopySim.Fruit;
using Xunit;

namespace CanopySim.Tests.Fruit;

public class BerryGrowthTests
{
    private static readonly FruitParameters Parameters = new();

    private static readonly BerryGrowth Growth = new(Parameters);

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.5)]
    public void Structure_is_complete_at_veraison_and_small_where_starved(double share)
    {
        var crop = AtVeraison(share);
        Assert.Equal(1000 * Parameters.BerryStructure * share, crop.StructureDryMass, 1e-9);
        Assert.Equal(share, BerryGrowth.SizeShare(crop), 1e-9);
        Assert.Equal(1, BerryGrowth.StructureProgress(crop, Parameters), 1e-9);
        Assert.Equal(5.5, Growth.Brix(crop), 1e-9);
        // Stalks are 5 % of the fresh mass: common practice, no source.
        Assert.Equal(1000 * share * 0.5 * Parameters.BerryFreshMass / 0.95, Growth.FreshMass(crop), 1e-9);
    }

    /// <summary>
    /// Well fed at half of the fastest loading: 20 Brix between the 35 d of sums in a warm site and the 60 d of trade rates (0.25 to
    /// 0.35 a day, later 0.1 to 0.2; common practice, no source), never past where loading ends, never by 1 Brix a day.
    /// </summary>
    [Fact]
    public void Sugar_takes_five_to_nine_weeks_and_ends()
    {
        var crop = AtVeraison(1);
        int? ripe = null;
        for (var day = 0; day < 150; day++)
        {
            var before = Growth.Brix(crop);
            BerryGrowth.Grow(crop, Growth.SugarDemand(crop, day, 0.5), 1);
            Assert.InRange(Growth.Brix(crop) - before, 0, 1);
            if (ripe is null && Growth.Brix(crop) >= 20) ripe = day;
        }

        Assert.InRange(ripe ?? 999, 35, 60);
        Assert.InRange(Growth.Brix(crop), 22, Parameters.LoadingEnds);
    }

    private static Crop AtVeraison(double share)
    {
        var crop = new Crop { Berries = 1000 };
        for (var step = 0; step < 100; step++)
            BerryGrowth.Grow(crop, Growth.StructureDemand(crop, 0.01 * step, 0.01 * (step + 1)), share);
        return crop;
    }
}
