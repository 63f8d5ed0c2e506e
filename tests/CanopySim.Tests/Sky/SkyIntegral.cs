using CanopySim.Sky;
using MathNet.Numerics.Integration;

namespace CanopySim.Tests.Sky;

/// <summary>
/// Irradiances of a sky by Gauss-Legendre quadrature, sun in azimuth 0, panels split at the sun: independent of SkyDirections.
/// </summary>
internal static class SkyIntegral
{
    private const int Order = 96;

    public static double Horizontal(ISkyRadiance sky, double sunZenith) =>
        2 * Over(sky, sunZenith, 0, Math.PI, (zenith, _) => Math.Cos(zenith));

    /// <summary>On a vertical surface that faces an azimuth of 0 (the sun), π/2 or π.</summary>
    public static double Vertical(ISkyRadiance sky, double sunZenith, double facing) => facing switch
    {
        0 => 2 * Over(sky, sunZenith, 0, Math.PI / 2, (zenith, azimuth) => Math.Sin(zenith) * Math.Cos(azimuth)),
        Math.PI => 2 * Over(sky, sunZenith, Math.PI / 2, Math.PI, (zenith, azimuth) => -Math.Sin(zenith) * Math.Cos(azimuth)),
        _ => Over(sky, sunZenith, 0, Math.PI, (zenith, azimuth) => Math.Sin(zenith) * Math.Sin(azimuth)),
    };

    private static double Over(
        ISkyRadiance sky, double sunZenith, double azimuthFrom, double azimuthTo, Func<double, double, double> cosine)
    {
        double Panel(double zenithFrom, double zenithTo, double from, double to) => GaussLegendreRule.Integrate(
            (zenith, azimuth) => sky.RelativeRadiance(zenith, azimuth) * cosine(zenith, azimuth) * Math.Sin(zenith),
            zenithFrom, zenithTo, from, to, Order);

        var middle = (azimuthFrom + azimuthTo) / 2;
        return Panel(0, sunZenith, azimuthFrom, middle) + Panel(0, sunZenith, middle, azimuthTo)
            + Panel(sunZenith, Math.PI / 2, azimuthFrom, middle) + Panel(sunZenith, Math.PI / 2, middle, azimuthTo);
    }
}
