using CanopySim.Numerics;
using CanopySim.Photosynthesis;

namespace CanopySim.Assessment;

/// <summary>The sun on a berry.</summary>
/// <param name="Beam">Direct sun that a spot facing it absorbs [W m⁻²]; 0 in shade.</param>
/// <param name="Spread">Diffuse and scattered light that the cluster absorbs [W m⁻² of its surface].</param>
/// <param name="BerryRadius">Radius of the berry [m].</param>
/// <param name="ClusterDiameter">Width of its cluster [m].</param>
public readonly record struct BerrySun(double Beam, double Spread, double BerryRadius, double ClusterDiameter);

/// <summary>The air about the fruit: temperature [°C], pressure [kPa], wind among the leaves [m s⁻¹].</summary>
public readonly record struct BerryAir(double Temperature, double Pressure, double Wind);

/// <summary>
/// Temperature of the spot of a berry that faces the sun, in steady state: a berry of 6 mm settles within some six
/// minutes. The berry conducts heat from its lit to its shaded side. In its inside Laplace's equation holds, on its
/// surface k ∂T/∂r + h (T − Ta) = absorbed light; with the light as a sum of Legendre polynomials fₙ Pₙ(cos θ) about
/// the sun, the facing spot is Σ fₙ / (h + n k / R) over the air. Two limits, mixed by the compactness of the cluster:
/// a berry alone, f = max(0, cos θ), in a wind about the berry; a berry of a closed cluster, whose inner half passes no
/// heat, f = |cos θ|, in a wind about the cluster. Diffuse light comes to a berry alone from all around; to one of a
/// closed cluster as the sun does, since its half sphere has twice the surface of the cluster that it makes. h is
/// forced or free convection, whichever is more, and longwave. All that fruit sees is taken to be as warm as the air,
/// and its transpiration is left out. The approach is that of Smart &amp; Sinclair 1976, Agric Meteorol 17:241-259,
/// from memory; the series is derived here. Published: up to 12 °C above the air (Oxford Companion to Wine 2006).
/// </summary>
public static class SunlitBerry
{
    // Of a berry: nearly water's 0.6 with a fifth of sugar in it [W m⁻¹ K⁻¹]. From memory.
    private const double Conductivity = 0.5;

    // Of fruit skin. 0.95 to 0.98, general, from memory.
    private const double Emissivity = 0.96;

    // What the terms beyond would add to a berry of 6 mm is a thousandth.
    private const int EvenTerms = 6;

    // A last step this short leaves an error of a thousandth of the spot's excess [K].
    private const double Settled = 0.01;

    // f₂ₘ of max(0, cos θ): (4 m + 1) / 2 times the integral of x P₂ₘ(x) from 0 to 1, and a quarter for m = 0. |cos θ|
    // has twice as much.
    private static readonly double[] HalfLit = MakeHalfLit();

    /// <summary>Temperature of the warmest spot [°C].</summary>
    /// <param name="sun">What the berry absorbs.</param>
    /// <param name="air">The air about it.</param>
    /// <param name="compactness">0 berries apart, 1 a closed cluster.</param>
    public static double HottestSpot(in BerrySun sun, in BerryAir air, double compactness) => air.Temperature
        + ((1 - compactness) * Excess(sun, air, 2 * sun.BerryRadius, isClosed: false))
        + (compactness * Excess(sun, air, sun.ClusterDiameter, isClosed: true));

    /// <summary>
    /// The facing spot over the air at a fixed coefficient h [K] for light that is absorbed as above.
    /// </summary>
    internal static double Spot(in BerrySun sun, double transfer, double conductivity, bool isClosed)
    {
        var perRadius = conductivity / sun.BerryRadius;
        var sum = isClosed ? 0 : 0.5 / (transfer + perRadius);
        for (var m = 0; m < HalfLit.Length; m++)
            sum += (isClosed ? 2 : 1) * HalfLit[m] / (transfer + (2 * m * perRadius));
        return isClosed ? (sun.Beam + sun.Spread) * sum : (sun.Beam * sum) + (sun.Spread / transfer);
    }

    // Convection and longwave hang on how warm the berry is on average: found by substitution, which closes in by a
    // third a step or faster.
    private static double Excess(in BerrySun sun, in BerryAir air, double diameter, bool isClosed)
    {
        if (sun.Beam <= 0 && sun.Spread <= 0) return 0;
        var convection = new SphereConvection(air, diameter);
        var kelvin = UnitConversion.KelvinFromCelsius(air.Temperature);
        var absorbed = isClosed ? 2 * HalfLit[0] * (sun.Beam + sun.Spread) : (HalfLit[0] * sun.Beam) + sun.Spread;
        var (mean, transfer) = (0.0, 0.0);
        for (var step = 0; step < 40; step++)
        {
            var warm = kelvin + mean;
            var longwave =
                Emissivity * LeafEnergyBalance.StefanBoltzmann * (warm + kelvin) * ((warm * warm) + (kelvin * kelvin));
            transfer = convection.At(mean) + longwave;
            var next = absorbed / transfer;
            if (Math.Abs(next - mean) < Settled) break;
            mean = next;
        }

        return Spot(sun, transfer, Conductivity, isClosed);
    }

    private static double[] MakeHalfLit()
    {
        var terms = new double[EvenTerms + 1];
        terms[0] = 0.25;

        // ∫ x P₂ₘ dx from 0 to 1 is 1/8 for m = 1, and each next −(2 m − 1) / (2 m + 4) of the last.
        var integral = 0.125;
        for (var m = 1; m <= EvenTerms; m++)
        {
            terms[m] = 0.5 * ((4 * m) + 1) * integral;
            integral *= -((2 * m) - 1.0) / ((2 * m) + 4);
        }

        return terms;
    }
}
