namespace CanopySim.Numerics;

/// <summary>The normal distribution of mean 0 and standard deviation 1.</summary>
public static class StandardNormal
{
    /// <summary>
    /// The standard normal value below which a share p (between 0 and 1) lies, to about 1 in 10⁷: Wichura 1988, Applied
    /// Statistics 37:477-484, algorithm AS 241, PPND7; coefficients from memory, held against another library in the tests.
    /// </summary>
    public static double Quantile(double p)
    {
        var q = p - 0.5;
        if (Math.Abs(q) <= 0.425)
        {
            var r = 0.180625 - q * q;
            return q * (((59.109374720 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179)
                / (((67.187563600 * r + 78.757757664) * r + 17.895169469) * r + 1);
        }

        var tail = Math.Sqrt(-Math.Log(q < 0 ? p : 1 - p));
        double value;
        if (tail <= 5)
        {
            var r = tail - 1.6;
            value = (((0.17023821103 * r + 1.3067284816) * r + 2.7568153900) * r + 1.4234372777)
                / ((0.12021132975 * r + 0.73700164250) * r + 1);
        }
        else
        {
            var r = tail - 5;
            value = (((0.017337203997 * r + 0.42868294337) * r + 3.0812263860) * r + 6.6579051150)
                / ((0.012258202635 * r + 0.24197894225) * r + 1);
        }

        return q < 0 ? -value : value;
    }
}
