using CanopySim.Growth;
using CanopySim.Phenology;
using CanopySim.Tests.Weather;
using CanopySim.Weather;
using CsCheck;
using Xunit;

namespace CanopySim.Tests.Phenology;

/// <summary>Heat of any day, development at any temperature, stages of any weather.</summary>
public class PhenologyPropertyTests
{
    // The order of the four temperatures is what ScenarioChecks demands.
    private static readonly Gen<GrowthParameters> AnyGrowth =
        Gen.Select(Gen.Double[0, 12], Gen.Double[20, 34], Gen.Double[0.1, 6], Gen.Double[0.1, 10]).Select((low, best, plateau, fall) => new GrowthParameters
        {
            BaseTemperature = low,
            OptimumTemperature = best,
            DeclineTemperature = best + plateau,
            CeilingTemperature = best + plateau + fall,
        });

    [Fact]
    public void Development_rises_to_its_optimum_falls_after_its_decline_and_is_nothing_outside() =>
        Gen.Select(AnyGrowth, Gen.Double[-20, 60], Gen.Double[0, 20]).Sample((growth, temperature, more) =>
        {
            var (cool, warm) = (ThermalResponse.Rate(temperature, growth), ThermalResponse.Rate(temperature + more, growth));
            Assert.InRange(cool, 0, growth.OptimumTemperature - growth.BaseTemperature);
            if (temperature + more <= growth.DeclineTemperature) Assert.True(warm >= cool - 1e-12);
            if (temperature >= growth.OptimumTemperature) Assert.True(warm <= cool + 1e-12);
            if (temperature <= growth.BaseTemperature || temperature >= growth.CeilingTemperature) Assert.Equal(0, cool);
            // No jump: steepest is the fall from decline to ceiling.
            var steepest = Math.Max(1, (growth.OptimumTemperature - growth.BaseTemperature) / (growth.CeilingTemperature - growth.DeclineTemperature));
            Assert.InRange(Math.Abs(warm - cool), 0, (steepest * more) + 1e-9);
        }, iter: 20_000);

    /// <summary>
    /// Without a cutoff: max(0, T − L) is convex in T, and of the same mean a sine stays longer at its extremes than a triangle, which
    /// leaves the mean at all; so sine ≥ triangle ≥ average. A cutoff takes from the top, and the order is lost.
    /// </summary>
    [Fact]
    public void A_sine_has_no_less_heat_than_a_triangle_and_that_no_less_than_the_average() =>
        Gen.Select(Gen.Double[-20, 40], Gen.Double[0, 30], Gen.Double[0, 20]).Sample((minimum, range, lower) =>
        {
            var maximum = minimum + range;
            var (average, triangle, sine) = (DegreeDays.Average(minimum, maximum, lower), DegreeDays.SingleTriangle(minimum, maximum, lower), DegreeDays.SingleSine(minimum, maximum, lower));
            Assert.True(sine >= triangle - 1e-9 && triangle >= average - 1e-9, $"{sine} {triangle} {average}");
            Assert.InRange(average, 0, Math.Max(0, maximum - lower));
            Assert.InRange(sine, 0, Math.Max(0, maximum - lower) + 1e-9);
            // Where the threshold lies under the whole day the three are one.
            if (lower <= minimum) Assert.Equal(average, sine, 1e-9);
        }, iter: 20_000);

    [Fact]
    public void A_cutoff_bounds_the_heat_and_a_warmer_day_never_has_less() =>
        Gen.Select(Gen.Double[-20, 40], Gen.Double[0, 30], Gen.Double[0, 20], Gen.Double[0.1, 20], Gen.Double[0, 10]).Sample((minimum, range, lower, above, warmer) =>
        {
            foreach (var method in new Func<double, double, double, double?, double>[] { DegreeDays.Average, DegreeDays.SingleTriangle, DegreeDays.SingleSine })
            {
                var heat = method(minimum, minimum + range, lower, lower + above);
                Assert.InRange(heat, -1e-9, above + 1e-9);
                Assert.True(method(minimum + warmer, minimum + range + warmer, lower, lower + above) >= heat - 1e-9);
            }
        }, iter: 20_000);

    [Fact]
    public void Stages_come_in_order_in_any_weather() =>
        Gen.Select(WeatherGen.Days(320), Gen.Double[0, 2].Array[320], Gen.Int[0, 60], Gen.Bool).Sample((days, supply, budbreak, isGiven) =>
        {
            var stages = new Stages(new Cultivar(), new GrowthParameters(), isGiven ? days[budbreak].Date : null);
            var (thermalTime, progress) = (0.0, 0.0);
            for (var day = 0; day < days.Length; day++)
            {
                stages.Advance(days[day], supply[day]);
                Assert.True(stages.ThermalTime >= thermalTime && stages.VeraisonProgress >= progress);
                Assert.InRange(stages.VeraisonProgress, 0, 1);
                (thermalTime, progress) = (stages.ThermalTime, stages.VeraisonProgress);
                Assert.Equal(stages.Bloom is not null, stages.ThermalTimeSinceBloom is not null);
            }

            if (isGiven) Assert.Equal(days[budbreak].Date, stages.Budbreak);
            Assert.True(stages.Bloom is null || stages.Bloom > stages.Budbreak);
            Assert.True(stages.Veraison is null || stages.Veraison > stages.Bloom);
            Assert.Equal(stages.Veraison is not null, stages.VeraisonProgress >= 1);
        }, iter: 150);

    /// <summary>As long as no hour passes the optimum, warmer days bring every stage no later.</summary>
    [Fact]
    public void Warmer_days_bring_no_stage_later() =>
        Gen.Select(Gen.Select(Gen.Double[-5, 14], Gen.Double[0, 11]).Array[320], Gen.Double[0, 3]).Sample((days, warmer) =>
        {
            var (cool, warm) = (Of(WeatherGen.Of(days)), Of(WeatherGen.Of(days, warmer)));
            Assert.True(NoLater(warm.Budbreak, cool.Budbreak) && NoLater(warm.Bloom, cool.Bloom) && NoLater(warm.Veraison, cool.Veraison));
        }, iter: 100);

    private static bool NoLater(DateOnly? warm, DateOnly? cool) => cool is null || warm <= cool;

    private static Stages Of(WeatherDay[] days)
    {
        var stages = new Stages(new Cultivar(), new GrowthParameters(), null);
        foreach (var day in days) stages.Advance(day, 1);
        return stages;
    }
}
