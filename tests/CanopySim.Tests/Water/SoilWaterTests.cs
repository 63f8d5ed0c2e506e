using CanopySim.Water;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Water;

public class SoilWaterTests
{
    // Laterals first, then expansion, nodes, gas exchange last: Lebon et al. 2006, Ann Bot 98:175-185; Pellegrino et al. 2005.
    [Fact]
    public void Drying_stops_laterals_first_and_gas_exchange_last()
    {
        for (var fraction = 0.0; fraction <= 1; fraction += 0.01)
        {
            Assert.True(WaterStress.Laterals(fraction) <= WaterStress.Expansion(fraction));
            Assert.True(WaterStress.Expansion(fraction) <= WaterStress.Nodes(fraction));
            Assert.True(WaterStress.Nodes(fraction) <= WaterStress.Stomata(fraction));
        }

        Assert.Equal(1, WaterStress.Laterals(1));
        Assert.Equal(0, WaterStress.Stomata(0));
    }

    // Shares of transpirable water at which a process begins to fall: laterals 0.5-0.65, expansion 0.4-0.5, nodes 0.2-0.35 (0.40
    // here), photosynthesis 0.3-0.35: Lebon 2006, Pellegrino 2005/2006, from memory.
    [Fact]
    public void Processes_begin_to_fall_where_recalled()
    {
        Assert.True(WaterStress.Laterals(0.66) == 1 && WaterStress.Laterals(0.49) < 1);
        Assert.True(WaterStress.Expansion(0.51) == 1 && WaterStress.Expansion(0.39) < 1);
        Assert.True(WaterStress.Nodes(0.41) == 1 && WaterStress.Nodes(0.2) < 1);
        Assert.True(WaterStress.Stomata(0.36) == 1 && WaterStress.Stomata(0.29) < 1);
    }

    // By hand: 100 mm, half full; evaporation 0.8 x 0.5.
    [Fact]
    public void A_day_is_rain_less_transpiration_and_evaporation()
    {
        var water = new SoilWater(new SoilParameters { TranspirableWater = 100, InitialShare = 0.5 });
        water.CloseDay(rain: 5, transpiration: 3);
        Assert.Equal(51.6, water.Stored, 1e-12);
        Assert.Equal(0, water.Irrigated);
    }

    [Fact]
    public void Irrigation_starts_below_its_share()
    {
        var water = new SoilWater(new SoilParameters { TranspirableWater = 100, InitialShare = 0.4, IrrigateBelow = 0.4, IrrigationAmount = 10 });
        water.CloseDay(0, 3);
        Assert.Equal(10, water.Irrigated);
        Assert.Equal(40 - 3 - 0.32 + 10, water.Stored, 1e-12);
        water.CloseDay(0, 3);
        Assert.Equal(10, water.Irrigated);
    }

    [Fact]
    public void The_store_is_never_empty_below_nothing_nor_over_full() =>
        Gen.Select(Gen.Double[0, 80], Gen.Double[0, 30]).Array[30].Sample(days =>
        {
            var water = new SoilWater(new SoilParameters { TranspirableWater = 60 });
            foreach (var (rain, transpiration) in days)
            {
                water.CloseDay(rain, transpiration);
                Assert.InRange(water.Fraction, 0, 1);
            }
        });
}
