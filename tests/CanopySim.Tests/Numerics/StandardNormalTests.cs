using CanopySim.Numerics;
using MathNet.Numerics.Distributions;
using Xunit;

namespace CanopySim.Tests.Numerics;

public class StandardNormalTests
{
    /// <summary>Against Math.NET Numerics' inverse normal distribution, into tails of one in 10¹².</summary>
    [Fact]
    public void Normal_quantiles_are_another_librarys()
    {
        for (var exponent = -12.0; exponent <= -0.31; exponent += 0.05)
        {
            var p = Math.Pow(10, exponent);
            Assert.Equal(Normal.InvCDF(0, 1, p), StandardNormal.Quantile(p), 2e-6);
            Assert.Equal(-StandardNormal.Quantile(p), StandardNormal.Quantile(1 - p), 1e-3);
        }

        Assert.Equal(0, StandardNormal.Quantile(0.5));
    }
}
