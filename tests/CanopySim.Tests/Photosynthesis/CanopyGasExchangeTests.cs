using CanopySim.Light;
using CanopySim.Photosynthesis;
using CanopySim.Tests.Seasons;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>The leaves of a short piece of row on a day in June.</summary>
public class CanopyGasExchangeTests
{
    private static readonly DateOnly Date = new(2025, 6, 10);

    [Fact]
    public void EveryNumberOfThreadsGivesTheSameBits()
    {
        var (light, day) = LightOfDay();
        var one = new CanopyGasExchange(SeasonCases.Small, 1).Day(light, day, 0.8, [1, 1]);
        Assert.True(one.Count > 100);
        Assert.All(one, leaf => Assert.True(double.IsFinite(leaf.NetAssimilationGrams)));
        Assert.True(one.Sum(leaf => leaf.NetAssimilationGrams) > 0);
        Assert.Equal(one, new CanopyGasExchange(SeasonCases.Small, 2).Day(light, day, 0.8, [1, 1]));
        Assert.Equal(one, new CanopyGasExchange(SeasonCases.Small, 3).Day(light, day, 0.8, [1, 1]));
    }

    /// <summary>Sunlit and shaded parts of every blade, hour by hour, against the solver in double.</summary>
    [Fact]
    public void PartsOfBladesComeBackToTheirBlades()
    {
        var (light, day) = LightOfDay();
        var optics = SeasonCases.Small.Optics;
        var parameters = SeasonCases.Small.Leaf;
        var blades = Enumerable.Range(0, light.Canopy.Leaves.Count)
            .Where(surface => light.Canopy.Leaves[surface] is not null)
            .Select(surface => new CanopyBlade(
                light.Canopy.Leaves[surface]!, surface, light.Canopy.Areas[surface], light.Canopy.Areas[surface], 1, 0.3 + (surface % 8 * 0.1), 0.5 + (surface % 5 * 0.1), 0.1))
            .ToArray();
        var airs = light.Hours.Select(hour => day.Hours[hour])
            .Select(hour => new LeafEnvironment(hour.AirTemperatureCelsius, hour.VaporPressure, hour.AirPressure, hour.WindSpeed, 420)).ToArray();
        var batches = airs.Select(air => new LeafBatch(air, parameters)).ToArray();
        var hours = new CanopyHours(light, optics, blades, 0.7, [.. Enumerable.Range(0, airs.Length)], batches, keep: null);
        hours.Solve(2);
        var sunlit = 0;
        for (var hour = 0; hour < airs.Length; hour++)
        {
            var solver = new LeafSolver(airs[hour], parameters);
            for (var i = 0; i < blades.Length; i++)
            {
                var blade = blades[i];
                var parts = LeafParts.Of(light, hour, blade.Surface, blade.Area, optics);
                LeafGasExchange Part(double ppfd, double nir) =>
                    solver.Solve(new LeafState(ppfd, nir, blade.CapacityFactor, blade.RespirationFactor, blade.Width, 0.7));
                var (inSun, inShade) = (Part(parts.SunlitPpfd, parts.SunlitNir), Part(parts.ShadedPpfd, parts.ShadedNir));
                if (parts.SunlitShare > 0) sunlit++;
                Assert.Equal(Mean(parts, inSun.NetAssimilation, inShade.NetAssimilation), hours.NetAssimilation(hour, i), 1e-3);
                Assert.Equal(Mean(parts, inSun.Transpiration, inShade.Transpiration), hours.Transpiration(hour, i), 1e-3);
            }
        }

        Assert.InRange(sunlit, 100, (airs.Length * blades.Length) - 100);
    }

    /// <summary>A blade that grew since it was placed has no more light than it had, but works with the area it has.</summary>
    [Fact]
    public void LightAsPlacedIsSpreadOverTheBladeOfTheDay()
    {
        var (light, day) = LightOfDay();
        var exchange = new CanopyGasExchange(SeasonCases.Small, 1);
        var before = exchange.Day(light, day, 0.8, [1, 1]).MaxBy(leaf => leaf.NetAssimilationGrams);
        before.Leaf.Area *= 1.1;
        var after = exchange.Day(light, day, 0.8, [1, 1]).Single(leaf => leaf.Surface == before.Surface);
        Assert.Equal(before.Leaf.Area, after.Area);
        Assert.Equal(before.AbsorbedParMoles, after.AbsorbedParMoles);
        Assert.InRange(after.NetAssimilationGrams / before.NetAssimilationGrams, 1.001, 1.099);
    }

    private static double Mean(LeafParts parts, double sunlit, double shaded) =>
        (parts.SunlitShare * sunlit) + ((1 - parts.SunlitShare) * shaded);

    private static (LightOfDay Light, WeatherDay Day) LightOfDay()
    {
        var weather = SeasonCases.Northern(SeasonCases.Small);
        var canopy = Simulation.CanopyOn(SeasonCases.Small, weather, SeasonCases.UtcOffset, SeasonCases.Draft(), Date);
        var light = new CanopyLight(SeasonCases.Small, Quality.Draft, SeasonCases.UtcOffset, 2);
        light.Place(canopy, true);
        var day = weather.Days.Single(day => day.Date == Date);
        return (light.Solve(day), day);
    }
}
