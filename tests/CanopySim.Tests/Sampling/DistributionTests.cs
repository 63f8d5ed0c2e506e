using MathNet.Numerics.Distributions;
using Xunit;
using Ours = CanopySim.Sampling.Distribution;

namespace CanopySim.Tests.Sampling;

public class DistributionTests
{
    private static readonly double[] Shares = [0.001, 0.025, 0.1, 0.3, 0.5, 0.65, 0.9, 0.99, 0.9999];

    /// <summary>Against Math.NET Numerics; our normal quantiles are right to 1 in 10⁶.</summary>
    [Fact]
    public void Quantiles_are_another_librarys()
    {
        foreach (var p in Shares)
        {
            Assert.Equal(ContinuousUniform.InvCDF(-2, 5, p), Ours.Uniform(-2, 5).Quantile(p), 1e-12);
            Assert.Equal(Normal.InvCDF(20, 3, p), Ours.Normal(20, 3).Quantile(p), 1e-5);
            Assert.Equal(Triangular.InvCDF(1, 6, 2, p), Ours.Triangular(1, 2, 6).Quantile(p), 1e-12);
            Assert.Equal(LogNormal.InvCDF(Math.Log(40), Math.Log(1.3), p), Ours.LogNormal(40, 1.3).Quantile(p), 1e-4);
        }
    }

    [Fact]
    public void Known_quantiles_are_met_and_joined_by_straight_lines()
    {
        var known = Ours.FromQuantiles((0, 10), (0.1, 14), (0.5, 15), (1, 20));
        Assert.Equal([10, 12, 14, 14.5, 15, 17.5, 20], new[] { 0, 0.05, 0.1, 0.3, 0.5, 0.75, 1 }.Select(p => Math.Round(known.Quantile(p), 12)));
        Assert.Throws<ArgumentException>(() => Ours.FromQuantiles((0, 10), (1, 9)));
        Assert.Throws<ArgumentException>(() => Ours.FromQuantiles((0.1, 10), (1, 11)));
    }

    /// <summary>A part of a distribution has the quantiles of the whole, its share stretched; nothing lies beyond its ends.</summary>
    [Fact]
    public void A_part_is_drawn_from_alone()
    {
        var part = Ours.Normal(20, 3).Within(17, 26);
        var (low, high) = (Normal.CDF(20, 3, 17), Normal.CDF(20, 3, 26));
        foreach (var p in Shares)
            Assert.Equal(Normal.InvCDF(20, 3, low + (p * (high - low))), part.Quantile(p), 1e-5);
        Assert.Equal((17.0, 26.0), (part.Quantile(0), part.Quantile(1)));
        Assert.Equal(3, Ours.Triangular(0, 1, 4).Within(0, 3).Quantile(1), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Ours.Uniform(0, 1).Within(2, 3));
    }

    [Fact]
    public void Ends_are_finite_and_quantiles_rise()
    {
        Ours[] all = [Ours.Uniform(0, 1), Ours.Normal(0, 1), Ours.Triangular(0, 0, 1), Ours.Triangular(0, 1, 1), Ours.LogNormal(1, 2), Ours.Normal(0, 1).Within(-1, 9)];
        foreach (var distribution in all)
        {
            double[] values = [.. Enumerable.Range(0, 1001).Select(i => distribution.Quantile(i / 1000.0))];
            Assert.All(values, value => Assert.True(double.IsFinite(value)));
            Assert.All(values.Zip(values.Skip(1)), pair => Assert.True(pair.First < pair.Second));
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => Ours.Uniform(0, 1).Quantile(1.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Ours.Uniform(0, 1).Quantile(double.NaN));
    }

    [Fact]
    public void Impossible_distributions_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Ours.Uniform(1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Ours.Normal(double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Ours.Normal(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Ours.Triangular(0, 2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Ours.LogNormal(1, 1));
    }
}
