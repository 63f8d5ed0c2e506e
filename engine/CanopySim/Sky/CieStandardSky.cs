namespace CanopySim.Sky;

/// <summary>
/// The CIE standard general sky: L/Lz = f(χ) φ(Z) / (f(Zs) φ(0)) with gradation φ = 1 + a exp(b / cos Z) and indicatrix
/// f = 1 + c (exp(d χ) − exp(d π/2)) + e cos² χ, χ the angle from the sun. CIE S 011:2003 = ISO 15469:2004, table 1, types 1
/// (steep overcast) to 15 (white-blue turbid).
/// </summary>
public sealed class CieStandardSky : ISkyRadiance
{
    public const int TypeCount = 15;

    private static readonly (double A, double B, double C, double D, double E)[] Types =
    [
        (4, -0.7, 0, -1, 0), (4, -0.7, 2, -1.5, 0.15), (1.1, -0.8, 0, -1, 0), (1.1, -0.8, 2, -1.5, 0.15), (0, -1, 0, -1, 0),
        (0, -1, 2, -1.5, 0.15), (0, -1, 5, -2.5, 0.30), (0, -1, 10, -3, 0.45), (-1, -0.55, 2, -1.5, 0.15), (-1, -0.55, 5, -2.5, 0.30),
        (-1, -0.55, 10, -3, 0.45), (-1, -0.32, 10, -3, 0.45), (-1, -0.32, 16, -3, 0.30), (-1, -0.15, 16, -3, 0.30),
        (-1, -0.15, 24, -2.8, 0.15),
    ];

    private readonly (double A, double B, double C, double D, double E) _type;
    private readonly SolarPosition _sun;
    private readonly double _zenithRadiance;

    /// <summary>The sky of a type, 1 to 15, for a sun.</summary>
    public CieStandardSky(int type, SolarPosition sun)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(type, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(type, TypeCount);
        _type = Types[type - 1];
        _sun = sun with { ZenithRadians = Math.Clamp(sun.ZenithRadians, 0, Math.PI / 2) };
        _zenithRadiance = Gradation(0) * Indicatrix(_sun.ZenithRadians);
    }

    /// <summary>Radiance over that of the zenith.</summary>
    public double RelativeRadiance(double zenithRadians, double azimuthRadians)
    {
        var fromSun = SkyAngles.Between(zenithRadians, azimuthRadians, _sun.ZenithRadians, _sun.AzimuthRadians);
        return Gradation(zenithRadians) * Indicatrix(fromSun) / _zenithRadiance;
    }

    private double Gradation(double zenith) =>
        zenith >= Math.PI / 2 ? 1 : 1 + _type.A * Math.Exp(_type.B / Math.Cos(zenith));

    private double Indicatrix(double fromSun)
    {
        var cosine = Math.Cos(fromSun);
        return 1 + _type.C * (Math.Exp(_type.D * fromSun) - Math.Exp(_type.D * Math.PI / 2)) + _type.E * cosine * cosine;
    }
}
