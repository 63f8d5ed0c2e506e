using CanopySim.Photosynthesis;
using CanopySim.Weather;
using Xunit;

namespace CanopySim.Tests.Photosynthesis;

/// <summary>
/// Vine leaves in saturating light over leaf temperature, conductance and energy balance coupled. Optimum in the field 27 to 32 °C
/// (Zufferey, Murisier &amp; Schultz 2000, Riesling and Chasselas), near 30 °C (Kriedemann &amp; Smart 1971), 25 to 34 °C
/// (Greer, Chardonnay and Merlot in a hot climate): abstracts seen, no tables.
/// </summary>
public class LeafHeatTests
{
    // Vapor pressure stays while air warms, as on a day: the deficit rises with the air. Both a dry and a moist air mass.
    public static TheoryData<double, double> Leaves => new()
    {
        { 25, 1.2 },
        { 25, 1.8 },
        { 27.5, 1.5 },
        { 30, 1.2 },
        { 30, 1.8 },
    };

    [Theory]
    [MemberData(nameof(Leaves))]
    public void Assimilation_is_best_between_25_and_32_degrees(double growth, double vapor)
    {
        var course = Course(growth, vapor);
        var best = course.MaxBy(gas => gas.NetAssimilation);
        Assert.InRange(best.LeafTemperatureCelsius, 25, 32);
    }

    [Theory]
    [MemberData(nameof(Leaves))]
    public void At_45_degrees_a_tenth_of_the_best_is_left_at_most(double growth, double vapor)
    {
        var course = Course(growth, vapor);
        var best = course.Max(gas => gas.NetAssimilation);
        var hot = course.Where(gas => gas.LeafTemperatureCelsius >= 45).ToList();
        Assert.NotEmpty(hot);
        Assert.All(hot, gas => Assert.InRange(gas.GrossAssimilation, 0, 0.1 * best));
    }

    // Leaves of the model as it comes, at 1,500 µmol m-2 s-1 absorbed PAR, 12 cm wide, wind 1.5 m/s.
    private static List<LeafGasExchange> Course(double growth, double vapor)
    {
        var parameters = new LeafParameters { GrowthTemperature = growth };
        var leaf = new LeafState(1500, 60, 1, 1, 0.12, 1);
        var course = new List<LeafGasExchange>();
        for (var air = 8.0; air <= 50; air += 0.25)
        {
            var present = Math.Min(vapor, 0.95 * SaturationVaporPressure.At(air));
            course.Add(LeafSolver.Solve(new LeafEnvironment(air, present, 100, 1.5, 420), leaf, parameters));
        }

        return course;
    }
}
