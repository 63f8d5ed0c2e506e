namespace CanopySim.Sky;

/// <summary>
/// Coefficients of <see cref="AllWeatherSky"/> by clearness bin: Perez, Seals &amp; Michalsky 1993, Solar Energy 50:235-245,
/// table 1. A parameter is x1 + x2 Zs + Δ (x3 + x4 Zs), Zs [rad], except the circumsolar pair of the first bin.
/// </summary>
internal static class AllWeatherCoefficients
{
    internal readonly record struct Coefficients(double X1, double X2, double X3, double X4)
    {
        public double At(double zenith, double brightness) => X1 + X2 * zenith + brightness * (X3 + X4 * zenith);
    }

    /// <summary>Lower ends of clearness ε of bins 2 to 8.</summary>
    private static readonly double[] BinStarts = [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2];

    internal static readonly Coefficients[] A =
    [
        new(1.3525, -0.2576, -0.269, -1.4366),
        new(-1.2219, -0.773, 1.4148, 1.1016),
        new(-1.1, -0.2515, 0.8952, 0.0156),
        new(-0.5484, -0.6654, -0.2672, 0.7117),
        new(-0.6, -0.3566, -2.5, 2.325),
        new(-1.0156, -0.367, 1.0078, 1.4051),
        new(-1, 0.0211, 0.5025, -0.5119),
        new(-1.05, 0.0289, 0.426, 0.359),
    ];

    internal static readonly Coefficients[] B =
    [
        new(-0.767, 0.0007, 1.2734, -0.1233),
        new(-0.2054, 0.0367, -3.9128, 0.9156),
        new(0.2782, -0.1812, -4.5, 1.1766),
        new(0.7234, -0.6219, -5.6812, 2.6297),
        new(0.2937, 0.0496, -5.6812, 1.8415),
        new(0.2875, -0.5328, -3.85, 3.375),
        new(-0.3, 0.1922, 0.7023, -1.6317),
        new(-0.325, 0.1156, 0.7781, 0.0025),
    ];

    internal static readonly Coefficients[] C =
    [
        new(2.8, 0.6004, 1.2375, 1),
        new(6.975, 0.1774, 6.4477, -0.1239),
        new(24.7219, -13.0812, -37.7, 34.8438),
        new(33.3389, -18.3, -62.25, 52.0781),
        new(21, -4.7656, -21.5906, 7.2492),
        new(14, -0.9999, -7.1406, 7.5469),
        new(19, -5, 1.2438, -1.9094),
        new(31.0625, -14.5, -46.1148, 55.375),
    ];

    internal static readonly Coefficients[] D =
    [
        new(1.8734, 0.6297, 0.9738, 0.2809),
        new(-1.5798, -0.5081, -1.7812, 0.108),
        new(-5, 1.5218, 3.9229, -2.6204),
        new(-3.5, 0.0016, 1.1477, 0.1062),
        new(-3.5, -0.1554, 1.4062, 0.3988),
        new(-3.4, -0.1078, -1.075, 1.5702),
        new(-4, 0.025, 0.3844, 0.2656),
        new(-7.2312, 0.405, 13.35, 0.6234),
    ];

    internal static readonly Coefficients[] E =
    [
        new(0.0356, -0.1246, -0.5718, 0.9938),
        new(0.2624, 0.0672, -0.219, -0.4285),
        new(-0.0156, 0.1597, 0.4199, -0.5562),
        new(0.4659, -0.3296, -0.0876, -0.0329),
        new(0.0032, 0.0766, -0.0656, -0.1294),
        new(-0.0672, 0.4016, 0.3017, -0.4844),
        new(1.0468, -0.3788, -2.4517, 1.4656),
        new(1.5, -0.6426, 1.8564, 0.5636),
    ];

    /// <summary>Bin, from 0, of a clearness.</summary>
    public static int BinOf(double clearness)
    {
        var bin = 0;
        while (bin < BinStarts.Length && clearness >= BinStarts[bin]) bin++;
        return bin;
    }

    /// <summary>c; in the first bin exp[(Δ (c1 + c2 Zs))^c3] − c4.</summary>
    public static double Circumsolar(int bin, double zenith, double brightness)
    {
        var c = C[bin];
        if (bin > 0) return c.At(zenith, brightness);
        return Math.Exp(Math.Pow(brightness * (c.X1 + c.X2 * zenith), c.X3)) - c.X4;
    }

    /// <summary>d; in the first bin −exp[Δ (d1 + d2 Zs)] + d3 + Δ d4.</summary>
    public static double CircumsolarDecay(int bin, double zenith, double brightness)
    {
        var d = D[bin];
        if (bin > 0) return d.At(zenith, brightness);
        return -Math.Exp(brightness * (d.X1 + d.X2 * zenith)) + d.X3 + brightness * d.X4;
    }
}
