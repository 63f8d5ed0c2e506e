using System.Runtime.Intrinsics;
using CanopySim.Photosynthesis;
using Xunit;

namespace CanopySim.Tests.Photosynthesis;

public class VectorExponentialTests
{
    /// <summary>Against the platform's in double: 4e-7 relative, three and a half units of a float's last place.</summary>
    [Fact]
    public void TwoToThePowerOfAFloatIsWithinFourParts()
    {
        var worst = 0.0;
        for (var step = -1_200_000; step < 1_200_000; step += Vector256<float>.Count)
        {
            var x = (Vector256.Create((float)step) + Vector256<float>.Indices) * 1e-4f;
            var power = VectorExponential.PowerOfTwo(x);
            for (var lane = 0; lane < Vector256<float>.Count; lane++)
                worst = Math.Max(worst, Math.Abs((power[lane] / Math.Pow(2, x[lane])) - 1));
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"Worst relative error: {worst:g3}");
        Assert.InRange(worst, 1e-8, 4e-7);
    }

    [Fact]
    public void WholePowersAreExact()
    {
        for (var n = -120; n <= 120; n++)
            Assert.Equal((float)Math.Pow(2, n), VectorExponential.PowerOfTwo(Vector256.Create((float)n))[0]);
    }
}
