using CanopySim.Numerics;

namespace CanopySim.Sky;

/// <summary>How much air lies in the sun's way, and what clean dry air lets through at most.</summary>
public static class AirMass
{
    /// <summary>
    /// Relative optical air mass, 1 / (cos z + 0.50572 (96.07995 − z)^−1.6364), z in degrees: Kasten &amp; Young 1989, Applied
    /// Optics 28:4735-4738, from memory. 38 at the horizon, which also stands for a sun below it.
    /// </summary>
    public static double KastenYoung(double zenithRadians)
    {
        var zenith = Math.Clamp(zenithRadians, 0, Math.PI / 2);
        return 1 / (Math.Cos(zenith) + 0.50572 * Math.Pow(96.07995 - UnitConversion.DegreesFromRadians(zenith), -1.6364));
    }

    /// <summary>
    /// Share of the direct light that Rayleigh scattering alone leaves, exp(−δ m): δ of Kasten 1996, Solar Energy 56:239-244,
    /// from memory. No air is cleaner, so it bounds the direct light of a low sun.
    /// </summary>
    public static double CleanDryTransmittance(double airMass)
    {
        var m = airMass;
        var thickness = m <= 20
            ? 1 / (6.6296 + m * (1.7513 + m * (-0.1202 + m * (0.0065 - m * 0.00013))))
            : 1 / (10.4 + 0.718 * m);
        return Math.Exp(-thickness * m);
    }
}
