using CanopySim.Photosynthesis;
using Xunit;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>
/// The batch in floats against the solver in double; where the two differ, <see cref="LeafTwin"/> says what is right.
/// </summary>
public class LeafBatchTwinTests
{
    // Above these [K], [µmol m⁻² s⁻¹] two answers are held against the slow one: the solver in double is only that sure itself.
    private const double SureTemperature = 5e-4;
    private const double SureAssimilation = 5e-4;

    /// <summary>
    /// 200,000 leaves of the domain of <see cref="LeafCases"/> in 3,125 airs: leaf temperature within 0.01 K, net assimilation
    /// within 1e-3 µmol m⁻² s⁻¹ and 5e-3 in corners; half of all within a hundredth of that.
    /// </summary>
    [Fact]
    public void LeavesOfTheWholeDomainMeetTheirTwin()
    {
        var errors = Compare(new LeafParameters(), firstHour: 0, hours: 3125, atLeastCelsius: -10);
        Assert.Equal(200_000, errors.Temperature.Count);
        Assert.InRange(errors.WorstTemperature, 0, 0.01);
        Assert.InRange(errors.WorstAssimilation, 0, 5e-3);
        Assert.InRange(errors.Share(errors.Assimilation, 0.999), 0, 1e-3);
        Assert.InRange(errors.Share(errors.Assimilation, 0.5), 0, 1e-5);
        Assert.InRange(errors.Share(errors.Temperature, 0.5), 0, 1e-5);
        Assert.InRange(errors.WorstConductance, 0, 1e-3);
        Assert.InRange(errors.WorstTranspiration, 0, 5e-3);

        // Every tier has work, and the last has little.
        Assert.InRange(errors.Again, 1, 20_000);
        Assert.InRange(errors.Double, 1, 500);
    }

    /// <summary>
    /// Leaves that open far and close hard, in hot air, have three rest temperatures; the coolest holds (see
    /// <see cref="LeafSolverTwinTests"/>). Roots lie kelvins apart: no error would be small.
    /// </summary>
    [Theory]
    [InlineData(11, 15, 120, 0.001)]
    [InlineData(25, 15, 120, 0.001)]
    [InlineData(35, 15, 120, 0.001)]
    [InlineData(35, 12, 200, 0.05)]
    public void WhereThreeRootsExistTheCoolestHolds(double growthTemperature, double slope, double vcmax, double floor)
    {
        var parameters = new LeafParameters
        {
            GrowthTemperature = growthTemperature,
            StomatalSlope = slope,
            Vcmax25 = vcmax,
            StomatalFloor = floor,
        };
        var errors = Compare(parameters, firstHour: 0, hours: 600, atLeastCelsius: 28);
        Assert.InRange(errors.Temperature.Count, 10_000, 20_000);
        Assert.InRange(errors.WorstTemperature, 0, 0.01);
        Assert.InRange(errors.WorstAssimilation, 0, 5e-3);
        Assert.True(errors.Double >= 10, $"only {errors.Double} leaves in doubt");
    }

    private static Errors Compare(LeafParameters parameters, int firstHour, int hours, double atLeastCelsius)
    {
        var errors = new Errors();
        var scratch = new LeafBatchScratch();
        var actual = new LeafGasExchange[LeafBlock.Leaves];
        for (var hour = firstHour; hour < firstHour + hours; hour++)
        {
            var (environment, leaves) = LeafCases.Hour(hour, LeafBlock.Leaves);
            if (environment.AirTemperatureCelsius < atLeastCelsius) continue;
            var tally = new LeafBatch(environment, parameters).Solve(leaves, actual, scratch);
            var solver = new LeafSolver(environment, parameters);
            for (var i = 0; i < leaves.Length; i++)
            {
                var expected = solver.Solve(leaves[i]);
                if (Math.Abs(expected.LeafTemperatureCelsius - actual[i].LeafTemperatureCelsius) > SureTemperature
                    || Math.Abs(expected.NetAssimilation - actual[i].NetAssimilation) > SureAssimilation)
                    expected = new LeafTwin(environment, leaves[i], parameters).Solve(0.2);
                errors.Add(expected, actual[i]);
            }

            errors.Again += tally.Again;
            errors.Double += tally.Double;
        }

        errors.Report();
        return errors;
    }

    /// <summary>Differences of temperature [K], assimilation [µmol m⁻² s⁻¹], conductance and transpiration.</summary>
    private sealed class Errors
    {
        public List<double> Temperature { get; } = [];

        public List<double> Assimilation { get; } = [];

        public double WorstConductance { get; private set; }

        public double WorstTranspiration { get; private set; }

        public int Again { get; set; }

        public int Double { get; set; }

        public double WorstTemperature => Temperature.Max();

        public double WorstAssimilation => Assimilation.Max();

        public void Add(in LeafGasExchange expected, in LeafGasExchange actual)
        {
            Temperature.Add(Math.Abs(expected.LeafTemperatureCelsius - actual.LeafTemperatureCelsius));
            Assimilation.Add(Math.Abs(expected.NetAssimilation - actual.NetAssimilation));
            WorstConductance = Math.Max(
                WorstConductance, Math.Abs(expected.StomatalConductanceToWater - actual.StomatalConductanceToWater));
            WorstTranspiration = Math.Max(WorstTranspiration, Math.Abs(expected.Transpiration - actual.Transpiration));
        }

        public double Share(List<double> errors, double share) => errors.Order().ElementAt((int)(share * (errors.Count - 1)));

        public void Report() => TestContext.Current.TestOutputHelper?.WriteLine(
            $"{Temperature.Count} leaves, again {Again}, in double {Double}; worst T {WorstTemperature:g3}, A {WorstAssimilation:g3}, "
            + $"gs {WorstConductance:g3}, E {WorstTranspiration:g3}; median T {Share(Temperature, 0.5):g2}, A {Share(Assimilation, 0.5):g2}, "
            + $"99.9 % T {Share(Temperature, 0.999):g2}, A {Share(Assimilation, 0.999):g2}");
    }
}
