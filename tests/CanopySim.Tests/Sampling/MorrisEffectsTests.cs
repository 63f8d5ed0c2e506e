using CanopySim.Sampling;
using Xunit;

namespace CanopySim.Tests.Sampling;

public class MorrisEffectsTests(ITestOutputHelper output)
{
    private static readonly BootstrapSettings Settings = new() { Seed = 4 };

    private static MorrisEffects Of(Func<double[], double> model, int factors, int trajectories = 200, int levels = 4)
    {
        var points = MorrisDesign.Points(trajectories, factors, levels, 6);
        return MorrisEffects.Of(points, [.. points.Select(point => (double?)model(point))], Settings);
    }

    [Fact]
    public void Effects_of_a_plane_are_its_slopes_everywhere()
    {
        var found = Of(x => 3 + (2 * x[0]) - (5 * x[1]), 3);
        double[] slopes = [2, -5, 0];
        for (var factor = 0; factor < 3; factor++)
        {
            var effect = found.Factors[factor];
            Assert.Equal(slopes[factor], effect.Mu.Value, 1e-12);
            Assert.Equal(slopes[factor], effect.Mu.High, 1e-12);
            Assert.Equal(Math.Abs(slopes[factor]), effect.MuStar.Value, 1e-12);
            Assert.Equal(0, effect.Sigma.Value, 1e-12);
        }
    }

    /// <summary>
    /// y = (x1 − ½) x2 has the effects x2 and x1 − ½. At p levels x is spread evenly over (k + ½)/p: mean ½, variance (p² − 1)/12p²; at
    /// four levels |x − ½| is 1/8 or 3/8.
    /// </summary>
    [Fact]
    public void Effects_of_a_product_are_those_of_its_levels()
    {
        var found = Of((x) => (x[0] - 0.5) * x[1], 2, trajectories: 2000);
        var sigma = Math.Sqrt(15.0 / (12 * 16));
        var (first, second) = (found.Factors[0], found.Factors[1]);
        output.WriteLine($"{first}\n{second}");
        Held(0.5, first.Mu);
        Held(0.5, first.MuStar);
        Held(sigma, first.Sigma);
        Held(0, second.Mu);
        Held(0.25, second.MuStar);
        Held(sigma, second.Sigma);

        // Four standard errors of a mean of 2000 such effects.
        Assert.Equal(0.5, first.Mu.Value, 4 * sigma / Math.Sqrt(2000));
        Assert.InRange(first.Mu.High - first.Mu.Low, 3.5 * sigma / Math.Sqrt(2000), 4.4 * sigma / Math.Sqrt(2000));

        static void Held(double truth, Estimate estimate) => Assert.InRange(truth, estimate.Low, estimate.High);
    }

    [Fact]
    public void A_failed_item_drops_its_trajectory_and_no_other()
    {
        static double Model(double[] x) => Math.Exp(x[0]) * x[1];
        var points = MorrisDesign.Points(30, 2, 4, 6);
        double?[] outputs = [.. points.Select(point => (double?)Model(point))];
        (outputs[4], outputs[5], outputs[89]) = (null, double.NaN, double.NegativeInfinity);
        bool IsKept(int index) => index / 3 is not (1 or 29);
        var found = MorrisEffects.Of(points, outputs, Settings);
        var without = MorrisEffects.Of(
            [.. points.Where((_, index) => IsKept(index))], [.. outputs.Where((_, index) => IsKept(index))], Settings);
        Assert.Equal((28, 2), (found.Trajectories, found.DroppedTrajectories));
        Assert.Equal(without.Factors, found.Factors);
    }

    [Fact]
    public void Points_of_another_design_are_refused()
    {
        var points = LatinHypercube.Points(9, 2, 1);
        Assert.Throws<ArgumentException>(() => MorrisEffects.Of(points, new double?[8], Settings));
        Assert.Throws<ArgumentException>(() => MorrisEffects.Of(points, [.. points.Select(_ => (double?)1)], Settings));
        var nothing = MorrisEffects.Of(MorrisDesign.Points(3, 2, 4, 1), new double?[9], Settings);
        Assert.Empty(nothing.Factors);
        Assert.Equal((0, 3), (nothing.Trajectories, nothing.DroppedTrajectories));
    }
}
