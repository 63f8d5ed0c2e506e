using CanopySim.Photosynthesis;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>The fast leaf solution against the slow one over the whole domain.</summary>
public class LeafSolverTwinTests
{
    /// <summary>
    /// 4,000 leaves over air −5 to 50 °C, light 0 to 2200, deficit 0.05 to 7 kPa, wind 0 to 8 m s⁻¹, capacity and
    /// respiration 0 to 1.5, stress 0 to 1: leaf temperature within 0.01 K, assimilation within 1e-3 µmol m⁻² s⁻¹,
    /// and the balances of energy and CO₂ close.
    /// </summary>
    [Fact]
    public void EverydayLeavesMeetTheirTwin()
    {
        var worst = Compare(new LeafParameters(), 4000, 0.5, out var threeRoots);
        Assert.Equal(0, threeRoots);
        Report(worst);
        Assert.True(worst.Temperature <= 0.01 && worst.Assimilation <= 1e-3 && worst.Conductance <= 1e-4, worst.ToString());
    }

    /// <summary>
    /// A leaf that opens far and closes hard (g1 15 kPa^½, Vcmax 120) has three rest temperatures in hot air: closed
    /// and hot, open and cool, and one between that does not last. The coolest holds.
    /// </summary>
    [Theory]
    [InlineData(11, 2)]
    [InlineData(25, 10)]
    [InlineData(35, 15)]
    public void WhereThreeRootsExistTheCoolestHolds(double growthTemperature, int atLeast)
    {
        var parameters = new LeafParameters
        {
            GrowthTemperature = growthTemperature,
            StomatalSlope = 15,
            Vcmax25 = 120,
            StomatalFloor = 0.001,
        };
        var worst = Compare(parameters, 1500, 0.2, out var threeRoots);
        Report(worst);
        Assert.True(threeRoots >= atLeast, $"only {threeRoots} cases with three roots");
        Assert.True(worst.Temperature <= 0.01 && worst.Assimilation <= 1e-3, worst.ToString());
    }

    /// <summary>One of those leaves, by number: the cool root is several kelvin under the hot one.</summary>
    [Fact]
    public void TheCoolRootIsFarFromTheHotOne()
    {
        var parameters = new LeafParameters { GrowthTemperature = 35, StomatalSlope = 15, Vcmax25 = 120, StomatalFloor = 0.001 };
        var (environment, leaf) = LeafCases.At(261);
        var twin = new LeafTwin(environment, leaf, parameters);
        twin.Solve(0.1);
        Assert.Equal(3, twin.Roots.Count);
        Assert.True(twin.Roots[2] - twin.Roots[0] > 5);
        Assert.Equal(twin.Roots[0], LeafSolver.Solve(environment, leaf, parameters).LeafTemperatureCelsius, 0.001);
    }

    /// <summary>200,000 leaves of the domain: everything finite and in its place.</summary>
    [Fact]
    public void EverythingIsFinite()
    {
        var parameters = new LeafParameters();
        for (var index = 0; index < 200_000; index++)
        {
            var (environment, leaf) = LeafCases.At(index);
            var gas = LeafSolver.Solve(environment, leaf, parameters);
            var sum = gas.NetAssimilation + gas.StomatalConductanceToWater + gas.Transpiration + gas.LeafTemperatureCelsius + gas.IntercellularCo2;
            Assert.True(
                double.IsFinite(sum)
                && gas.GrossAssimilation >= 0
                && gas.StomatalConductanceToWater >= parameters.StomatalFloor
                && gas.IntercellularCo2 > 0
                && gas.LeafTemperatureCelsius > environment.AirTemperatureCelsius - 25,
                $"case {index}: {gas} {environment} {leaf}");
        }
    }

    private static Errors Compare(LeafParameters parameters, int count, double scanStep, out int threeRoots)
    {
        var worst = new Errors();
        threeRoots = 0;
        for (var index = 0; index < count; index++)
        {
            var (environment, leaf) = LeafCases.At(index);
            var twin = new LeafTwin(environment, leaf, parameters);
            var expected = twin.Solve(scanStep);
            if (twin.Roots.Count >= 3) threeRoots++;
            var actual = LeafSolver.Solve(environment, leaf, parameters);
            worst = worst.With(expected, actual, index);
            if (index % 10 == 0) AssertClosed(environment, leaf, parameters, actual);
        }

        return worst;
    }

    // Both balances written out again from the answer alone.
    private static void AssertClosed(in LeafEnvironment environment, in LeafState leaf, LeafParameters parameters, in LeafGasExchange gas)
    {
        var boundary = LeafBoundaryLayer.At(environment.WindSpeed, leaf.Width);
        var heat = new LeafHeat(
            leaf.AbsorbedShortwave + LeafEnergyBalance.AbsorbedLongwave(
                environment.AirTemperatureCelsius, environment.VaporPressure, parameters.Emissivity),
            parameters.Emissivity,
            boundary.Heat,
            environment.AirTemperatureCelsius,
            environment.VaporPressure,
            environment.AirPressure);
        var vapor = LeafEnergyBalance.VaporConductance(gas.StomatalConductanceToWater, boundary.Vapor);
        var rest = LeafEnergyBalance.Residual(
            heat, gas.LeafTemperatureCelsius, SaturationVaporPressure.At(gas.LeafTemperatureCelsius), vapor, out _);
        Assert.Equal(0, rest, 0.05);
        var supplied = (environment.Co2 - gas.IntercellularCo2)
            / ((1 / boundary.Co2) + (MedlynConductance.VaporPerCo2 / gas.StomatalConductanceToWater));
        Assert.Equal(gas.NetAssimilation, supplied, 2e-3);
    }

    private static void Report(Errors worst) => TestContext.Current.TestOutputHelper?.WriteLine(worst.ToString());

    /// <summary>
    /// Worst differences: temperature [K], net assimilation [µmol m⁻² s⁻¹], conductance [mol m⁻² s⁻¹], and where.
    /// </summary>
    private readonly record struct Errors(double Temperature, double Assimilation, double Conductance, int TemperatureCase, int AssimilationCase)
    {
        public Errors With(in LeafGasExchange expected, in LeafGasExchange actual, int index)
        {
            var temperature = Math.Abs(expected.LeafTemperatureCelsius - actual.LeafTemperatureCelsius);
            var assimilation = Math.Abs(expected.NetAssimilation - actual.NetAssimilation);
            var conductance = Math.Abs(expected.StomatalConductanceToWater - actual.StomatalConductanceToWater);
            return new(
                Math.Max(Temperature, temperature),
                Math.Max(Assimilation, assimilation),
                Math.Max(Conductance, conductance),
                temperature > Temperature ? index : TemperatureCase,
                assimilation > Assimilation ? index : AssimilationCase);
        }
    }
}
