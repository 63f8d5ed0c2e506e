using CanopySim.Files.Batch;
using Xunit;

namespace CanopySim.Files.Tests.Batch;

/// <summary>Draws of a key follow its distribution, cut to its range.</summary>
public sealed class KeyDistributionTest
{
    // Quantiles of the standard normal distribution: Abramowitz & Stegun 1964, tables 26.1 and 26.5, from memory.
    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(0.975, 1.959964)]
    [InlineData(0.95, 1.644854)]
    [InlineData(0.01, -2.326348)]
    public void ANormalOneHasTheTablesQuantiles(double share, double score) =>
        Assert.Equal(100 + (5 * score), new KeyDistribution(DistributionKind.Normal, 0, 200, 100, 5).At(share), 1e-4);

    [Fact]
    public void WhatIsCutIsMadeUpForWithin()
    {
        // Cut at one standard deviation on both sides: 31.7 % go, and the middle half of what is left ends at Φ⁻¹(0.5 ± 0.25 × 0.6827).
        var cut = new KeyDistribution(DistributionKind.Normal, 95, 105, 100, 5);
        Assert.Equal(0.3173, cut.ShareCut, 1e-4);
        Assert.Equal(100 + (5 * 0.44177), cut.At(0.75), 1e-3);
        Assert.Equal((95, 105), (cut.At(0), cut.At(1)));
    }

    [Fact]
    public void ALognormalOneSpreadsByAFactor()
    {
        var soil = new KeyDistribution(DistributionKind.Lognormal, 0, 10_000, 150, 1.5);
        Assert.Equal(150, soil.At(0.5), 1e-6);
        Assert.Equal(150 * 1.5, soil.At(0.8413447), 1e-3);
        Assert.Equal(150 / 1.5, soil.At(0.1586553), 1e-3);
    }

    [Fact]
    public void ATriangularOneHasItsPeakAndMean()
    {
        var peak = new KeyDistribution(DistributionKind.Triangular, 1, 5, 2);
        Assert.Equal(2, peak.At(0.25), 1e-12);
        Assert.Equal((1 + 2 + 5) / 3.0, Enumerable.Range(0, 100_000).Average(i => peak.At((i + 0.5) / 100_000)), 1e-5);
    }

    [Fact]
    public void AUniformOneIsEven() => Assert.Equal(2.25, new KeyDistribution(DistributionKind.Uniform, 2, 3).At(0.25));
}
