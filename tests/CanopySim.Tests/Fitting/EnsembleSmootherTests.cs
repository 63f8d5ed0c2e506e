using CanopySim.Fitting;
using CanopySim.Numerics;
using Xunit;

namespace CanopySim.Tests.Fitting;

/// <summary>Straight-line problems, whose answer is known: prior N(0, 1), one observation y = a x of error s.</summary>
public class EnsembleSmootherTests
{
    private const int Members = 4000;

    // Posterior mean a y / (a² + s²), variance s² / (a² + s²); four standard errors of the members' mean and variance.
    [Theory]
    [InlineData(1, 1.5, 0.5, 1)]
    [InlineData(1, 1.5, 0.5, 4)]
    [InlineData(3, -2, 1, 4)]
    [InlineData(0.5, 1, 2, 2)]
    public void Straight_lines_are_answered_as_by_hand(double slope, double seen, double error, int steps)
    {
        var traits = Run(row => [slope * row[0]], [seen], [error], steps);
        var variance = error * error / ((slope * slope) + (error * error));
        Assert.InRange(Mean(traits, 0) - (slope * seen / ((slope * slope) + (error * error))), -Allowed(variance), Allowed(variance));
        Assert.InRange(Variance(traits, 0) / variance, 1 - (4 * Math.Sqrt(2.0 / Members)), 1 + (4 * Math.Sqrt(2.0 / Members)));
    }

    // Two observations of the sum and the difference of two traits: each by itself halves the variance it speaks of.
    [Fact]
    public void What_is_seen_of_two_traits_together_ties_them()
    {
        var traits = Run(row => [row[0] + row[1]], [2], [Math.Sqrt(2)], 3);
        Assert.InRange(Mean(traits, 0), 0.5 - Allowed(0.75), 0.5 + Allowed(0.75));
        Assert.InRange(Mean(traits, 1), 0.5 - Allowed(0.75), 0.5 + Allowed(0.75));
        var tie = traits.Average(row => (row[0] - 0.5) * (row[1] - 0.5));
        Assert.InRange(tie, -0.25 - (4 / Math.Sqrt(Members)), -0.25 + (4 / Math.Sqrt(Members)));
    }

    [Fact]
    public void A_trait_that_nothing_tells_of_stays_as_wide_with_few_members()
    {
        var traits = Draw(100);
        var moved = Step(traits, row => [row[0]], [1], [0.3], 1, 0);
        Assert.InRange(Variance(moved, 1) / Variance(traits, 1), 0.9, 1.1);
        Assert.InRange(Mean(moved, 1) - Mean(traits, 1), -0.1, 0.1);
        Assert.InRange(Variance(moved, 0), 0, 0.25);
    }

    [Fact]
    public void Members_that_keep_to_a_bound_stay_where_they_are()
    {
        var traits = Draw(200);
        var bound = new Observation(default, ObservedQuantity.Nodes, -10, 0.5, Bound.AtLeast);
        var moved = EnsembleSmoother.Step(
            traits, [.. traits.Select(row => new[] { row[0] })], [.. traits.Select(row => new[] { bound.Innovation(row[0], 0.4) })], [0.5], 1);
        Assert.Equal(traits.SelectMany(row => row), moved.SelectMany(row => row));
    }

    [Fact]
    public void Nothing_seen_moves_nothing()
    {
        var traits = Draw(10);
        Assert.Equal(traits.SelectMany(row => row), Step(traits, _ => [], [], [], 1, 0).SelectMany(row => row));
    }

    [Fact]
    public void An_error_must_be_positive() =>
        Assert.Throws<ArgumentException>(() => Step(Draw(10), row => [row[0]], [1], [0], 1, 0));

    private static double Allowed(double variance) => 4 * Math.Sqrt(variance / Members);

    private static double[][] Run(Func<double[], double[]> show, double[] seen, double[] errors, int steps)
    {
        var traits = Draw(Members);
        for (var step = 0; step < steps; step++) traits = Step(traits, show, seen, errors, steps, step);
        return traits;
    }

    private static double[][] Step(double[][] traits, Func<double[], double[]> show, double[] seen, double[] errors, int steps, int step)
    {
        var shown = traits.Select(show).ToList();
        var innovations = shown.Select((row, member) => row.Select((value, k) =>
            seen[k] + (Math.Sqrt(steps) * errors[k] * SeededValue.Normal(3, "error", member, k, step)) - value).ToArray()).ToList();
        return EnsembleSmoother.Step(traits, shown, innovations, errors, steps);
    }

    private static double[][] Draw(int members) =>
        [.. Enumerable.Range(0, members).Select(member => new[] { SeededValue.Normal(7, "a", member), SeededValue.Normal(7, "b", member) })];

    private static double Mean(double[][] traits, int trait) => traits.Average(row => row[trait]);

    private static double Variance(double[][] traits, int trait)
    {
        var mean = Mean(traits, trait);
        return traits.Sum(row => (row[trait] - mean) * (row[trait] - mean)) / (traits.Length - 1);
    }
}
